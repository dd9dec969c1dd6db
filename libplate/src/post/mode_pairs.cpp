// SPDX-License-Identifier: MPL-2.0
#include <plate/post/mode_pairs.h>

#include <plate/core/error.h>

#include <Eigen/Cholesky>
#include <Eigen/SVD>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{

namespace
{

using Modes = std::vector<int>;

/// Modes in runs of nearly the same frequency; of each mode the run it is in.
struct FrequencyGroups
{
  std::vector<Modes> groups;
  std::vector<std::size_t> of_mode;

  [[nodiscard]] bool together(int a, int b) const
  {
    return of_mode[static_cast<std::size_t>(a)] == of_mode[static_cast<std::size_t>(b)];
  }
};

FrequencyGroups frequency_groups(const Eigen::VectorXd& hz, double closeness)
{
  FrequencyGroups out;
  for (Eigen::Index mode = 0; mode < hz.size(); ++mode)
  {
    if (mode == 0 || hz(mode) > hz(mode - 1) * (1.0 + closeness))
      out.groups.emplace_back();
    out.groups.back().push_back(static_cast<int>(mode));
    out.of_mode.push_back(out.groups.size() - 1);
  }
  return out;
}

/// For each mode of one plate (rows) the part of it that lies in the space of each group of the other: squared cosine.
///
/// @param own    products of the plate's modes with themselves
/// @param cross  with the other plate's
/// @param other  products of the other plate's modes
Eigen::MatrixXd parts_in_groups(const Eigen::MatrixXd& own, const Eigen::MatrixXd& cross, const Eigen::MatrixXd& other,
                                const FrequencyGroups& groups)
{
  Eigen::MatrixXd parts(own.rows(), other.cols());
  for (Eigen::Index j = 0; j < other.cols(); ++j)
  {
    const Modes& group = groups.groups[groups.of_mode[static_cast<std::size_t>(j)]];
    const Eigen::MatrixXd to_group = cross(Eigen::all, group);
    const Eigen::MatrixXd gram = other(group, group);
    const Eigen::MatrixXd projected = gram.ldlt().solve(to_group.transpose());
    parts.col(j) = (to_group.array() * projected.transpose().array()).rowwise().sum() / own.diagonal().array();
  }
  return parts.array().isNaN().select(0.0, parts.cwiseMin(1.0)); // not a number: a shape that is zero at all points
}

/// Principal angles between the spaces of some modes of both plates. @source [Bjorck1973] theorem 1
Eigen::VectorXd principal_angles(const ShapeProducts& products, const Modes& reference, const Modes& other)
{
  const Eigen::MatrixXd gram_a = products.reference(reference, reference);
  const Eigen::MatrixXd gram_b = products.other(other, other);
  const Eigen::MatrixXd cross = products.cross(reference, other);
  const Eigen::MatrixXd half = gram_a.llt().matrixL().solve(cross);
  const Eigen::MatrixXd cosines = gram_b.llt().matrixL().solve(half.transpose());
  return cosines.jacobiSvd().singularValues().cwiseMin(1.0).array().acos(); // descending cosines
}

/// Joins the groups of both plates that pairs connect; keeps those with several modes in one plate.
std::vector<ModeGroup> paired_groups(const ShapeProducts& products, const std::vector<ShapePair>& pairs,
                                     const FrequencyGroups& reference, const FrequencyGroups& other)
{
  std::vector<ModeGroup> out;
  std::vector<bool> done(pairs.size(), false);
  for (std::size_t first = 0; first < pairs.size(); ++first)
  {
    ModeGroup joined;
    std::vector<std::size_t> waiting = {first};
    while (!waiting.empty())
    {
      const std::size_t pair = waiting.back();
      waiting.pop_back();
      if (done[pair])
        continue;
      done[pair] = true;
      joined.reference.push_back(pairs[pair].reference);
      joined.other.push_back(pairs[pair].other);
      for (std::size_t k = 0; k < pairs.size(); ++k)
        if (reference.together(pairs[k].reference, pairs[pair].reference) ||
            other.together(pairs[k].other, pairs[pair].other))
          waiting.push_back(k);
    }
    if (joined.reference.size() < 2)
      continue;
    std::sort(joined.reference.begin(), joined.reference.end());
    std::sort(joined.other.begin(), joined.other.end());
    joined.angles = principal_angles(products, joined.reference, joined.other);
    out.push_back(std::move(joined));
  }
  return out;
}

void check(const ShapeProducts& products, const Eigen::VectorXd& reference_hz, const Eigen::VectorXd& other_hz)
{
  if (reference_hz.size() != products.cross.rows() || other_hz.size() != products.cross.cols())
    throw InvalidInput(message("pair_by_shape: there are ", products.cross.rows(), " and ", products.cross.cols(),
                               " shapes, but ", reference_hz.size(), " and ", other_hz.size(), " frequencies"));
}

} // namespace

ModePairing pair_by_shape(const ShapeProducts& products, const Eigen::VectorXd& reference_hz,
                          const Eigen::VectorXd& other_hz, const PairingOptions& options)
{
  check(products, reference_hz, other_hz);
  const FrequencyGroups reference = frequency_groups(reference_hz, options.closeness);
  const FrequencyGroups other = frequency_groups(other_hz, options.closeness);
  const Eigen::MatrixXd in_other = parts_in_groups(products.reference, products.cross, products.other, other);
  const Eigen::MatrixXd in_reference =
      parts_in_groups(products.other, products.cross.transpose(), products.reference, reference).transpose();

  // The mean of both is the same however the modes of a group are paired among themselves; a little of the modal
  // assurance criterion decides there and nowhere else.
  constexpr double deciding = 1e-3;
  ModePairing out = {.assurance = modal_assurance(products), .pairs = {}, .unpaired = {}, .groups = {}};
  const std::vector<int> partner = best_assignment(0.5 * (in_other + in_reference) + deciding * out.assurance);
  for (int i = 0; i < static_cast<int>(partner.size()); ++i)
  {
    const int j = partner[static_cast<std::size_t>(i)];
    const double alike = std::max(in_other(i, j), in_reference(i, j));
    if (alike < options.least_assurance)
      out.unpaired.push_back(i);
    else
      out.pairs.push_back({.reference = i, .other = j, .assurance = out.assurance(i, j), .group_assurance = alike});
  }
  out.groups = paired_groups(products, out.pairs, reference, other);
  return out;
}

} // namespace plate
