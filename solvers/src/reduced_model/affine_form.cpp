// SPDX-License-Identifier: MPL-2.0
#include "affine_form.h"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>
#include <utility>

namespace plate::reduced
{

namespace
{

constexpr int num_rigid = 6;

/// Triangles that stand for all: some of each kind of cover, spread over the plate.
std::vector<std::size_t> standing_for_all(const std::vector<TriangleCover>& covers)
{
  constexpr std::size_t most_plain = 16;
  constexpr std::size_t most_cut = 4; // by the edge of a patch: sixteen times dearer
  std::map<std::tuple<int, bool, std::vector<int>>, std::vector<std::size_t>> kinds;
  for (std::size_t t = 0; t < covers.size(); ++t)
    kinds[{covers[t].bar, covers[t].patch_edge, covers[t].patches}].push_back(t);
  std::vector<std::size_t> chosen;
  for (const auto& [kind, triangles] : kinds)
  {
    const std::size_t count = std::min(triangles.size(), std::get<1>(kind) ? most_cut : most_plain);
    for (std::size_t i = 0; i < count; ++i)
      chosen.push_back(triangles[(2 * i + 1) * triangles.size() / (2 * count)]);
  }
  return chosen;
}

/// Columns W with W^T matrix W = identity, motions without energy left out.
Eigen::MatrixXd unit_energy_columns(const ElementMatrix& matrix, Form form)
{
  // Unknowns are scaled to like size first: rotations carry far less energy than displacements.
  const Eigen::VectorXd scale = matrix.diagonal().cwiseSqrt().cwiseInverse();
  const Eigen::MatrixXd scaled = scale.asDiagonal() * matrix * scale.asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(scaled);
  const Eigen::Index count = ShellTriangle::num_dofs - (form == Form::stiffness ? num_rigid : 0);
  const Eigen::VectorXd weight = eigen.eigenvalues().tail(count).cwiseSqrt().cwiseInverse();
  return scale.asDiagonal() * eigen.eigenvectors().rightCols(count) * weight.asDiagonal();
}

/// Upper triangle as a vector of the same norm.
Eigen::VectorXd packed(const Eigen::MatrixXd& symmetric)
{
  Eigen::VectorXd out(symmetric.rows() * (symmetric.rows() + 1) / 2);
  Eigen::Index at = 0;
  for (Eigen::Index j = 0; j < symmetric.cols(); ++j)
  {
    out.segment(at, j) = std::numbers::sqrt2 * symmetric.col(j).head(j);
    at += j;
    out(at++) = symmetric(j, j);
  }
  return out;
}

} // namespace

AffineForm::AffineForm(Form form, const Model& reference, const std::vector<TriangleCover>& covers) : form_(form)
{
  ElementMatrix matrix;
  for (const std::size_t triangle : standing_for_all(covers))
  {
    element_matrix(form_, reference, triangle, covers[triangle], matrix);
    places_.push_back({triangle, covers[triangle], unit_energy_columns(matrix, form_)});
  }
}

void AffineForm::add_sample(const Model& model)
{
  samples_.push_back(energies(model));
}

void AffineForm::choose(double tolerance)
{
  Eigen::MatrixXd samples(samples_.front().size(), static_cast<Eigen::Index>(samples_.size()));
  for (std::size_t i = 0; i < samples_.size(); ++i)
    samples.col(static_cast<Eigen::Index>(i)) = samples_[i];
  samples_.clear();
  combination_ = CombinationTerms(samples, samples.rows() / static_cast<Eigen::Index>(places_.size()), tolerance);
  std::vector<Place> kept;
  for (const Eigen::Index place : combination_.places())
    kept.push_back(places_[static_cast<std::size_t>(place)]);
  places_ = std::move(kept);
}

Eigen::VectorXd AffineForm::energies(const Model& model) const
{
  const Eigen::Index size = places_.front().unit_energy.cols();
  const Eigen::Index block = size * (size + 1) / 2;
  Eigen::VectorXd out(block * static_cast<Eigen::Index>(places_.size()));
  ElementMatrix matrix;
  for (std::size_t p = 0; p < places_.size(); ++p)
  {
    const Place& place = places_[p];
    element_matrix(form_, model, place.triangle, place.cover, matrix);
    out.segment(static_cast<Eigen::Index>(p) * block, block) =
        packed(place.unit_energy.transpose() * matrix * place.unit_energy);
  }
  return out;
}

Combination AffineForm::combine(const Model& model) const
{
  const Eigen::VectorXd at_places = energies(model);
  Combination out{.coefficients = combination_.coefficients(at_places)};
  out.misfit = combination_.misfit(at_places, out.coefficients);
  return out;
}

} // namespace plate::reduced
