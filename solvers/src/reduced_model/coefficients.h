// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "affine_form.h"
#include "parameter_samples.h"
#include "torsion_form.h"

#include <plate/assembly/parametric_model.h>

#include <vector>

namespace plate::reduced
{

/// How stiffness and mass at one point are combined of the terms.
struct Coefficients
{
  Combination stiffness; ///< torsion of bars apart
  Eigen::VectorXd torsion;
  Combination mass;             ///< point masses apart
  Eigen::VectorXd point_masses; ///< [kg]
  double air_density = 0.0;     ///< [kg/m3]
};

/// The point of the box at which a term of the stiffness or mass is that of the whole plate.
struct TermPoints
{
  std::vector<Point> stiffness;
  std::vector<Point> mass;
};

/// Coefficients at any point of the box, from a few elements of the model there: no mesh is made, nothing assembled.
class CoefficientMap
{
public:
  /// @param reference  in the middle of the box
  /// @param covers     of its triangles, without torsion
  /// @param samples    points to choose terms from
  /// @param tolerance  of energies [-]
  CoefficientMap(ParametricModel& design, const ParameterBox& box, const Model& reference,
                 const std::vector<TriangleCover>& covers, const std::vector<Point>& samples, double tolerance);

  [[nodiscard]] Coefficients at(std::span<const double> point) const;
  [[nodiscard]] const TermPoints& terms() const { return terms_; }
  [[nodiscard]] const TorsionForm& torsion() const { return torsion_; }

private:
  ParametricModel& design_;
  const ParameterBox& box_;
  const Model& reference_;
  AffineForm stiffness_;
  AffineForm mass_;
  TorsionForm torsion_;
  TermPoints terms_;
  mutable Model scratch_; // brought from point to point
};

} // namespace plate::reduced
