// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/form_changes.h>
#include <plate/assembly/parametric_model.h>
#include <plate/solvers/studies/sensitivity.h>

#include <Eigen/Core>

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace plate::sensitivity
{

/// Step of a difference as part of a parameter's scale, where the mesh stays: truncation and rounding leave less than
/// 1e-6 of the derivative; a third of it makes rounding that large.
inline constexpr double relative_step = 1e-4;

/// The same where nodes move.
///
/// Vectors stay as they are meanwhile, so that shear strains of the size of the distortion appear in the triangles; in
/// a thin plate their energy is large, and leaves an error of its third power. A bridge line moved over 1e-4 of its
/// distance left 3e-4 of the derivative, 1e-5 left 3e-6, 3e-6 3e-7 (of a viola top at 18 mm), and below 1e-6 rounding
/// takes over.
inline constexpr double moving_step = 3e-6;

/// How stiffness and mass, that of the air too, change with a parameter.
struct FormSlopes
{
  Eigen::VectorXd stiffness; ///< phi_i^T dK phi_j of the pairs, per unit of the parameter
  Eigen::VectorXd mass;      ///< phi_i^T dM phi_j of the pairs, per unit of the parameter
  double total_mass = 0.0;   ///< [kg per unit of the parameter]
  bool any = false;          ///< something changes
};

/// A design at the values of its parameters and one step to either side of them.
class ModelSteps
{
public:
  /// All arguments must outlive this.
  ModelSteps(ParametricModel& design, std::span<const SensitivityParameter> parameters, const Model& base);

  /// Slopes by differences over one step to both sides, or over two to one side where the other has no design.
  ///
  /// @throws InvalidInput if there is no design on either side
  [[nodiscard]] FormSlopes slopes(std::size_t parameter, const DofMap& dofs, const Eigen::MatrixXd& shapes,
                                  std::span<const VectorPair> pairs) const;

private:
  [[nodiscard]] bool moves(const Model& model) const; ///< has other nodes than the base
  [[nodiscard]] std::optional<Model> model_at(std::size_t parameter, double value) const;

  ParametricModel& design_;
  std::span<const SensitivityParameter> parameters_;
  const Model& base_;
};

} // namespace plate::sensitivity
