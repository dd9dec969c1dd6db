// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "form_slopes.h"

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
