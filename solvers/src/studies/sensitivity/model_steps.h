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

/// Step of a difference as part of a parameter's scale.
///
/// Vectors stay as they are while the mesh moves, so that shear strains of the order of the step appear; in a thin
/// plate their energy makes the error by truncation greater than that of the frequency itself. On plates with arch and
/// bar it is 1e-6 of the derivative at this step, in proportion to its square, and rounding is less: 1e-6 at a third of
/// it.
inline constexpr double relative_step = 1e-4;

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
  [[nodiscard]] std::optional<Model> model_at(std::size_t parameter, double value) const;

  ParametricModel& design_;
  std::span<const SensitivityParameter> parameters_;
  const Model& base_;
};

} // namespace plate::sensitivity
