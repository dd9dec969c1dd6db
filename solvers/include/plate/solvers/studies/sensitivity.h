// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/assembly/parametric_model.h>
#include <plate/solvers/modal.h>

#include <Eigen/Core>

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace plate
{

/// A parameter of a design and where it stands.
struct SensitivityParameter
{
  double value; ///< [unit of the parameter]
  /// Change that makes quite another plate, for the step: the value itself of a length, modulus or density; 57 degrees;
  /// 50 mm for a place on a viola. Positive [as value].
  double scale;
};

/// What to differentiate.
struct SensitivityOptions
{
  int num_modes = 12;       ///< lowest elastic modes
  double tolerance = 1e-10; ///< as ModalOptions::tolerance; errors of shapes count to first order here
  /// Called before each parameter with its index; return false to stop early.
  std::function<bool(std::size_t parameter, std::size_t num_parameters)> progress = nullptr;
};

/// Modes that follow one another closely.
struct CloseModes
{
  int first; ///< index of the first of them, from 0
  int count; ///< at least two
  /// They coincide but for rounding; else they are only near (PairingOptions::closeness) and mix under a change that
  /// moves them by about their distance.
  bool repeated;
};

/// Derivatives by one parameter.
struct Sensitivity
{
  /// Of each frequency, (n) [Hz per unit of the parameter]. Repeated modes take the derivatives of the branches that
  /// leave their frequency as the parameter grows, in ascending order.
  Eigen::VectorXd slopes_hz;
  double mass_slope = 0.0; ///< [kg per unit of the parameter]
  bool acts = false;       ///< stiffness, mass or air change at all
};

/// Modes of a design and their derivatives.
struct SensitivityResult
{
  Model model;                         ///< at the values of the parameters
  System system;                       ///< of the model
  ModalResult modes;                   ///< of the model
  std::vector<std::string> names;      ///< M1, M2, M5 or empty, (n)
  std::vector<CloseModes> close;       ///< of the modes given
  std::vector<Sensitivity> parameters; ///< in the order asked for; fewer if stopped early
  bool complete = false;               ///< false if stopped early
};

/// Exact derivatives of the frequencies of a design by its parameters.
///
/// d lambda = phi^T (dK - lambda dM) phi, with dK and dM from central differences of the matrices of the elements:
/// nothing is solved again, and the mesh moves with the parameter. The step is 1e-4 of the parameter's scale, 3e-6
/// where nodes move, which leaves a few 1e-6 of the greatest derivative by truncation and rounding. At the end of a
/// parameter's range the difference is taken to one side, of second order too.
///
/// Of repeated modes the derivatives are the eigenvalues of phi^T (dK - lambda dM) phi over all of them. In air the
/// mass of the air counts (Model::air_density); shapes in air are mixed of a few modes in vacuo, which leaves an error
/// of up to 1e-3 there.
///
/// For thousands of designs on one mesh see ReducedModel::slopes().
/// @param design      is asked for the model at all values and for a step of one parameter at a time to either side
/// @throws InvalidInput      if there is no such design, or a step changes the triangles instead of moving them
/// @throws NumericalFailure  if the modes do not converge
/// Cost: one modal analysis, then 0.2 s for a parameter that acts on all of a viola top, less for a bar or a patch.
/// @source repeated eigenvalues: [Seyranian1994]; simple ones: [Fox1968]; pinned by
/// tests/unit/solvers/sensitivity_test.cpp
[[nodiscard]] SensitivityResult sensitivities(ParametricModel& design, std::span<const SensitivityParameter> parameters,
                                              const SensitivityOptions& options = {});

/// Where thickness counts: what a mode's frequency gains for each unit of thickness added, per area, at the nodes.
///
/// Thickness is that of all plies of the laminate but cores (of all, if there are only cores), shared in proportion;
/// the mid-surface, bars and patches stay. The field is linear within triangles: at a corner the mean over the
/// triangles around it, so that its integral over the plate is exactly the derivative by an even change of the
/// thickness. Repeated modes share their mean.
/// @param modes  of this model, in vacuo or in its air
/// @return (num_nodes, n) [Hz/(m m2)]
/// Cost: that of one parameter of sensitivities().
/// @source pinned by tests/unit/solvers/thickness_slopes_test.cpp
[[nodiscard]] Eigen::MatrixXd thickness_slopes(const Model& model, const DofMap& dofs, const ModalResult& modes);

} // namespace plate
