// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>

#include <span>

namespace plate
{

/// Parameters in, model out: what the studies need to know of a design.
///
/// Design files implement it by moving the mesh instead of remaking it; another program implements it for its own
/// models. Parameters are in the units of whoever asks for the study.
class ParametricModel
{
public:
  virtual ~ParametricModel() = default;
  ParametricModel() = default;
  ParametricModel(const ParametricModel&) = delete;
  ParametricModel& operator=(const ParametricModel&) = delete;

  /// The model at a point of the parameter space.
  ///
  /// @throws InvalidInput if there is no such design
  [[nodiscard]] virtual Model build(std::span<const double> parameters) = 0;

  /// Brings a model of this design to another point, for those who ask for thousands of points on one mesh.
  ///
  /// Whoever can, changes only what the parameters change and leaves the mesh where it is; else the model is built anew.
  /// @throws InvalidInput if there is no such design
  virtual void rebuild(std::span<const double> parameters, Model& model) { model = build(parameters); }
};

} // namespace plate
