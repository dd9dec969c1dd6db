// SPDX-License-Identifier: MPL-2.0
#include "quick_estimate.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>

namespace plate::match
{

StackTraits stack_traits(const StackSpace& space, const Stack& stack)
{
  const std::vector<const LayerChoice*> layers = space.layers(stack);
  double h = 0.0;
  for (const LayerChoice* layer : layers)
    h += layer->ply.thickness;
  Eigen::Matrix3d A = Eigen::Matrix3d::Zero();
  Eigen::Matrix3d B = Eigen::Matrix3d::Zero();
  Eigen::Matrix3d D = Eigen::Matrix3d::Zero();
  Eigen::Vector2d shear = Eigen::Vector2d::Zero(); // compliance of the layers under one stress
  double mass = 0.0;
  double bottom = -0.5 * h;
  for (const LayerChoice* layer : layers)
  {
    const double t = layer->ply.thickness;
    const double top = bottom + t;
    A += t * layer->Q;
    B += 0.5 * (top * top - bottom * bottom) * layer->Q;
    D += (top * top * top - bottom * bottom * bottom) / 3.0 * layer->Q;
    shear += t * layer->shear.cwiseInverse();
    mass += t * layer->ply.material.density;
    bottom = top;
  }
  const double twist = D(0, 1) + 2.0 * D(2, 2);
  const double mean = std::sqrt(D(0, 0) * D(1, 1));
  Eigen::VectorXd values(14);
  values << std::log(A(0, 0)), std::log(A(1, 1)), std::log(A(2, 2)), std::log(D(0, 0)), std::log(D(1, 1)),
      std::log(twist), std::log(h), std::log(mass), std::log(h * h / shear(0)), std::log(h * h / shear(1)),
      D(0, 2) / mean, D(1, 2) / mean, B(0, 0) / std::sqrt(A(0, 0) * D(0, 0)), B(1, 1) / std::sqrt(A(1, 1) * D(1, 1));
  return {.values = values, .areal_mass = mass, .cross_ratio = D(0, 0) / D(1, 1), .twist_ratio = twist / mean};
}

Eigen::VectorXd QuickEstimate::monomials(const StackTraits& traits) const
{
  const Eigen::VectorXd x = (traits.values - centre_).cwiseQuotient(spread_);
  const Eigen::Index n = x.size();
  Eigen::VectorXd out(1 + n + n * (n + 1) / 2);
  out(0) = 1.0;
  out.segment(1, n) = x;
  Eigen::Index at = 1 + n;
  for (Eigen::Index i = 0; i < n; ++i)
    for (Eigen::Index j = i; j < n; ++j)
      out(at++) = x(i) * x(j);
  return out;
}

void QuickEstimate::fit(const std::vector<const StackTraits*>& traits, const Eigen::MatrixXd& values)
{
  constexpr double ridge = 1e-6; // per stack: traits that do not vary, or only together, are told nothing about
  const auto count = static_cast<Eigen::Index>(traits.size());
  centre_ = Eigen::VectorXd::Zero(traits.front()->values.size());
  for (const StackTraits* t : traits)
    centre_ += t->values / static_cast<double>(count);
  spread_ = Eigen::VectorXd::Zero(centre_.size());
  for (const StackTraits* t : traits)
    spread_ = spread_.cwiseMax((t->values - centre_).cwiseAbs());
  spread_ = (spread_.array() > 1e-12).select(spread_, 1.0);

  Eigen::MatrixXd rows(count, monomials(*traits.front()).size());
  for (Eigen::Index i = 0; i < count; ++i)
    rows.row(i) = monomials(*traits[static_cast<std::size_t>(i)]);
  weights_.resize(rows.cols(), values.cols());
  for (Eigen::Index target = 0; target < values.cols(); ++target)
  {
    std::vector<Eigen::Index> known;
    for (Eigen::Index i = 0; i < count; ++i)
      if (!std::isnan(values(i, target)))
        known.push_back(i);
    const Eigen::MatrixXd some = rows(known, Eigen::all);
    Eigen::MatrixXd normal = some.transpose() * some;
    normal.diagonal().array() += ridge * static_cast<double>(std::max<std::size_t>(known.size(), 1));
    const Eigen::VectorXd right = values(known, target);
    weights_.col(target) = normal.ldlt().solve(some.transpose() * right);
  }
}

Eigen::VectorXd QuickEstimate::values(const StackTraits& traits) const
{
  return weights_.transpose() * monomials(traits);
}

} // namespace plate::match
