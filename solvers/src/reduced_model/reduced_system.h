// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "coefficients.h"
#include "element_forms.h"

namespace plate::reduced
{

/// A matrix on the basis: projected, and its products with random fields.
struct ReducedMatrix
{
  Eigen::MatrixXd projected; ///< lower triangle, (vectors, vectors)
  Eigen::MatrixXd sketched;  ///< (fields, vectors)

  void add(double factor, const ReducedMatrix& term);

  /// x^T matrix x
  [[nodiscard]] double form(const Eigen::VectorXd& x) const;
};

/// Stiffness and mass at one point on the basis.
struct ReducedPair
{
  ReducedMatrix stiffness;
  ReducedMatrix mass;
};

/// Terms of stiffness and mass on a basis that grows.
class ReducedSystem
{
public:
  /// All of it must outlive this object.
  /// @param fields  random fields, see energy_fields()
  ReducedSystem(ParametricModel& design, const Model& reference, const std::vector<TriangleCover>& covers,
                const DofMap& dofs, const CoefficientMap& map, Vectors fields);

  /// Adds vectors to the basis; the rigid motions come first.
  void extend(const Vectors& added);

  /// Adds the mass of the air, which does not depend on the layup, once the basis is complete.
  void add_air();

  [[nodiscard]] ReducedPair combined(const Coefficients& coefficients) const;

  [[nodiscard]] const Vectors& basis() const { return basis_; }

  /// Relative error of the torsion of bars [-].
  [[nodiscard]] double torsion_error() const { return map_.torsion().error(); }

  /// Energy of the torsion of bars in a vector of the basis [J].
  [[nodiscard]] double torsion_energy(const Coefficients& coefficients, const Eigen::VectorXd& vector) const;

  /// Mass of the plate and its bars and point masses [kg].
  [[nodiscard]] double mass(const Coefficients& coefficients) const;

private:
  void extend(ReducedMatrix& term, const Vectors& product) const;

  ParametricModel& design_;
  const Model& reference_;
  const std::vector<TriangleCover>& covers_;
  const DofMap& dofs_;
  const CoefficientMap& map_;
  Vectors fields_;
  Vectors basis_;
  std::vector<ReducedMatrix> stiffness_;
  std::vector<ReducedMatrix> torsion_;
  std::vector<ReducedMatrix> mass_;
  std::vector<ReducedMatrix> point_masses_;
  ReducedMatrix air_;           // per density
  Eigen::VectorXd term_masses_; // [kg]
};

} // namespace plate::reduced
