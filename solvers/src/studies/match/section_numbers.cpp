// SPDX-License-Identifier: MPL-2.0
#include "section_numbers.h"

#include <plate/laminates/section.h>

#include <Eigen/QR>

#include <algorithm>
#include <cmath>

namespace plate::match
{

namespace
{

constexpr int num_face_powers = 5; // a bar's fourth moment has the fifth power of the distance of its face
constexpr int num_moments = 5;

/// Places a laminate with some patches on its faces, about the middle of the laminate.
std::vector<PlacedPly> placed(const Laminate& laminate, const Model& model, const std::vector<int>& patches)
{
  std::vector<PlacedPly> plies;
  place_plies(laminate, total_thickness(laminate), plies);
  for (const int number : patches)
  {
    const Patch& patch = model.patches[static_cast<std::size_t>(number)];
    const bool outside = patch.side == PlateSide::outside;
    double z = outside ? plies.back().top : plies.front().bottom - total_thickness(patch.laminate);
    std::vector<PlacedPly> added;
    for (const Ply& ply : patch.laminate.plies)
    {
      added.push_back(
          {.material = &ply.material, .bottom = z, .top = z + ply.thickness, .angle = ply.angle, .grain = ply.grain});
      z += ply.thickness;
    }
    plies.insert(outside ? plies.end() : plies.begin(), added.begin(), added.end());
  }
  return plies;
}

/// All choices of some of the patches, in their order.
std::vector<std::vector<int>> subsets(const std::vector<int>& patches)
{
  std::vector<std::vector<int>> out = {{}};
  for (const int patch : patches)
  {
    const std::size_t count = out.size();
    for (std::size_t i = 0; i < count; ++i)
    {
      out.push_back(out[i]);
      out.back().push_back(patch);
    }
  }
  return out;
}

void append(std::vector<double>& out, const Eigen::Ref<const Eigen::MatrixXd>& symmetric)
{
  for (Eigen::Index j = 0; j < symmetric.cols(); ++j)
    for (Eigen::Index i = 0; i <= j; ++i)
      out.push_back(symmetric(i, j));
}

void append_face_powers(std::vector<double>& out, const Model& model, double face)
{
  if (model.bars.empty())
    return;
  double power = 1.0;
  for (int k = 0; k < num_face_powers; ++k)
    out.push_back(power *= face);
}

Eigen::VectorXd vector_of(const std::vector<double>& values)
{
  return Eigen::Map<const Eigen::VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

} // namespace

SectionReader::SectionReader(const Model& model, std::span<const TriangleCover> covers) : model_(model)
{
  const auto add = [&](const std::vector<int>& patches)
  {
    if (std::find(covers_.begin(), covers_.end(), patches) == covers_.end())
      covers_.push_back(patches);
  };
  for (const TriangleCover& cover : covers)
    if (cover.patch_edge)
      for (const std::vector<int>& patches : subsets(cover.patches))
        add(patches);
    else
      add(cover.patches);
}

SectionNumbers SectionReader::numbers(const Laminate& laminate) const
{
  std::vector<double> stiffness = {1.0};
  std::vector<double> mass = {1.0};
  for (const std::vector<int>& patches : covers_)
  {
    const std::vector<PlacedPly> plies = placed(laminate, model_, patches);
    const SectionStiffness section = section_stiffness(plies, Eigen::Matrix3d::Identity(), MaterialAxes());
    for (const Eigen::Matrix3d& P : section.P)
      append(stiffness, P);
    append(stiffness, section.shear);
    append_face_powers(stiffness, model_, plies.front().bottom);
    for (const double moment : section_mass(plies))
      mass.push_back(moment);
    append_face_powers(mass, model_, plies.front().bottom);
  }
  return {.stiffness = vector_of(stiffness), .mass = vector_of(mass)};
}

SectionNumbers section_units(const SectionReader& reader, const Model& model, std::span<const Laminate> laminates)
{
  // A moment beyond the second comes with the curvature of the plate times its thickness, at most a thirtieth.
  const auto weight = [](int moment) { return moment < 3 ? 1.0 : moment == 3 ? 0.03 : 0.001; };
  SectionNumbers largest = reader.numbers(laminates.front());
  double half = 0.0;
  for (const Laminate& laminate : laminates)
  {
    const SectionNumbers numbers = reader.numbers(laminate);
    largest.stiffness = largest.stiffness.cwiseAbs().cwiseMax(numbers.stiffness.cwiseAbs());
    largest.mass = largest.mass.cwiseAbs().cwiseMax(numbers.mass.cwiseAbs());
    half = std::max(half, 0.5 * total_thickness(laminate));
  }
  SectionNumbers out = largest;
  const Eigen::Index powers = model.bars.empty() ? 0 : num_face_powers;
  const Eigen::Index stiffness_block = 6 * num_moments + 3 + powers;
  for (Eigen::Index at = 1; at < out.stiffness.size(); at += stiffness_block)
  {
    const double stretching = largest.stiffness.segment(at, 6).maxCoeff();
    for (int k = 0; k < num_moments; ++k)
      out.stiffness.segment(at + 6 * k, 6).setConstant(stretching * std::pow(half, k) / weight(k));
    out.stiffness.segment(at + 6 * num_moments, 3)
        .setConstant(largest.stiffness.segment(at + 6 * num_moments, 3).maxCoeff());
  }
  for (Eigen::Index at = 1; at < out.mass.size(); at += num_moments + powers)
    for (int k = 1; k < num_moments; ++k)
      out.mass(at + k) = largest.mass(at) * std::pow(half, k) / weight(k);
  return out;
}

SectionCombination::SectionCombination(const Eigen::MatrixXd& numbers, const Eigen::VectorXd& units)
    : scale_(units.cwiseInverse())
{
  constexpr double negligible = 1e-7; // of the largest of the set
  const Eigen::MatrixXd scaled = scale_.asDiagonal() * numbers;
  Eigen::MatrixXd rest = scaled;
  const double limit = negligible * scaled.colwise().norm().maxCoeff();
  while (terms_.size() < static_cast<std::size_t>(numbers.cols()))
  {
    Eigen::Index worst = 0;
    if (rest.colwise().norm().maxCoeff(&worst) <= limit && !terms_.empty())
      break;
    terms_.push_back(worst);
    const Eigen::VectorXd direction = rest.col(worst).normalized();
    for (int pass = 0; pass < 2; ++pass) // the second pass repairs the rounding of the first
      rest -= direction * (direction.transpose() * rest).eval();
  }
  Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> decomposition(scaled(Eigen::all, terms_));
  inverse_ = decomposition.pseudoInverse();
}

Eigen::VectorXd SectionCombination::coefficients(const Eigen::VectorXd& numbers) const
{
  return inverse_ * scale_.cwiseProduct(numbers);
}

} // namespace plate::match
