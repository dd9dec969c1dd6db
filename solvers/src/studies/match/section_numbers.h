// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate::match
{

/// The numbers of a laminate in which stiffness (torsion of bars apart) and mass of a plate are linear.
///
/// Of each combination of patches that lies over some point: moments of the in-plane stiffness and shear stiffness, or
/// moments of the mass; with bars, powers of the distance of the face they are glued to; and 1 for what does not
/// change.
struct SectionNumbers
{
  Eigen::VectorXd stiffness;
  Eigen::VectorXd mass;
};

/// Takes the numbers of laminates on one plate.
class SectionReader
{
public:
  /// @param model   its patches and bars; must outlive this object
  /// @param covers  of its triangles
  SectionReader(const Model& model, std::span<const TriangleCover> covers);

  [[nodiscard]] SectionNumbers numbers(const Laminate& laminate) const;

private:
  const Model& model_;
  std::vector<std::vector<int>> covers_; // patches, each combination once
};

/// What one unit of each number stands for among a set of laminates, so that equal parts of it weigh alike: moments in
/// multiples of the stiffest or heaviest at half the thickness. Thin shells hardly feel the moments beyond the second.
[[nodiscard]] SectionNumbers section_units(const SectionReader& reader, const Model& model,
                                           std::span<const Laminate> laminates);

/// Members of a set that are combined to any of it.
class SectionCombination
{
public:
  /// @param numbers  of the set, one column each
  /// @param units    section_units(), (rows)
  SectionCombination(const Eigen::MatrixXd& numbers, const Eigen::VectorXd& units);

  /// Members of the set that are combined, in the order of the coefficients.
  [[nodiscard]] const std::vector<Eigen::Index>& terms() const { return terms_; }
  [[nodiscard]] Eigen::VectorXd coefficients(const Eigen::VectorXd& numbers) const;

private:
  std::vector<Eigen::Index> terms_;
  Eigen::VectorXd scale_;
  Eigen::MatrixXd inverse_;
};

} // namespace plate::match
