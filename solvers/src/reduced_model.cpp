// SPDX-License-Identifier: MPL-2.0
#include <plate/core/units.h>
#include <plate/solvers/reduced_model.h>

#include "reduced_model/implementation.h"

#include <plate/core/error.h>

#include <algorithm>
#include <utility>

namespace plate
{

using namespace reduced;

namespace
{

void check_options(const ReducedOptions& options)
{
  if (options.num_modes < 1 || options.max_snapshots < 1 || !(options.tolerance > 0.0))
    throw InvalidInput(
        message("ReducedModel: num_modes and max_snapshots must be at least 1 and tolerance positive; got ",
                options.num_modes, ", ", options.max_snapshots, ", ", options.tolerance));
}

} // namespace

double ReducedModes::largest_error() const
{
  return errors_hz.cwiseQuotient(frequencies_hz).maxCoeff();
}

ReducedModel::ReducedModel(ParametricModel& design, ParameterBox box, const ReducedOptions& options)
{
  check_box(box);
  check_options(options);
  implementation_ = std::make_unique<Implementation>(design, std::move(box), options);
}

ReducedModel::~ReducedModel() = default;
ReducedModel::ReducedModel(ReducedModel&&) noexcept = default;
ReducedModel& ReducedModel::operator=(ReducedModel&&) noexcept = default;

ReducedModes ReducedModel::modes(std::span<const double> parameters) const
{
  check_inside(implementation_->box, parameters);
  const Coefficients coefficients = implementation_->map.at(parameters);
  EstimatedModes estimated = implementation_->estimate(coefficients);
  ReducedModes out;
  out.frequencies_hz = estimated.modes.eigenvalues.cwiseSqrt() / two_pi;
  out.errors_hz = implementation_->errors(estimated).cwiseProduct(out.frequencies_hz);
  out.shares = std::move(estimated.modes.vectors);
  out.mass = implementation_->system.mass(coefficients);
  return out;
}

Eigen::MatrixXd ReducedModel::slopes(std::span<const double> parameters, const ReducedModes& modes) const
{
  const ParameterBox& box = implementation_->box;
  check_inside(box, parameters);
  Eigen::MatrixXd slopes(modes.frequencies_hz.size(), static_cast<Eigen::Index>(parameters.size()));
  for (std::size_t k = 0; k < parameters.size(); ++k)
  {
    // Coefficients are smooth: a step of a thousandth of the box loses a millionth; it turns inward at the faces.
    const double step = 1e-3 * (box.high[k] - box.low[k]);
    Point below(parameters.begin(), parameters.end());
    Point above = below;
    below[k] = std::max(box.low[k], parameters[k] - step);
    above[k] = std::min(box.high[k], parameters[k] + step);
    ReducedPair change = implementation_->system.combined(implementation_->map.at(above));
    const ReducedPair lower = implementation_->system.combined(implementation_->map.at(below));
    change.stiffness.add(-1.0, lower.stiffness);
    change.mass.add(-1.0, lower.mass);
    for (Eigen::Index j = 0; j < slopes.rows(); ++j)
    {
      const double omega = two_pi * modes.frequencies_hz(j);
      const Eigen::VectorXd y = modes.shares.col(j);
      const double lambda_change = change.stiffness.form(y) - omega * omega * change.mass.form(y);
      slopes(j, static_cast<Eigen::Index>(k)) = lambda_change / (above[k] - below[k]) / (2.0 * omega * two_pi);
    }
  }
  return slopes;
}

Eigen::MatrixXd ReducedModel::shapes(const ReducedModes& modes) const
{
  return implementation_->system.basis() * modes.shares;
}

Eigen::MatrixXd ReducedModel::assurance(const ReducedModes& a, const ReducedModes& b) const
{
  const Eigen::MatrixXd& products = implementation_->displacement_products;
  const Eigen::MatrixXd weighted = products * b.shares;
  const Eigen::VectorXd aa = a.shares.cwiseProduct(products * a.shares).colwise().sum();
  const Eigen::VectorXd bb = b.shares.cwiseProduct(weighted).colwise().sum();
  return (a.shares.transpose() * weighted).cwiseAbs2().cwiseQuotient(aa * bb.transpose());
}

const Model& ReducedModel::model() const
{
  return implementation_->reference;
}

const DofMap& ReducedModel::dofs() const
{
  return implementation_->plain.dofs;
}

const ParameterBox& ReducedModel::box() const
{
  return implementation_->box;
}

const ReducedFigures& ReducedModel::figures() const
{
  return implementation_->figures;
}

std::string ReducedModel::summary() const
{
  const ReducedFigures& f = implementation_->figures;
  return message(f.num_vectors, " vectors of ", f.num_snapshots, " snapshots, ", f.num_stiffness_terms, " and ",
                 f.num_mass_terms, " terms of stiffness and mass, largest relative error ", f.largest_error,
                 f.converged ? "" : " (not converged)");
}

} // namespace plate
