// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/dof_map.h>
#include <plate/assembly/parametric_model.h>

#include <Eigen/Core>

#include <cstddef>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace plate
{

/// Range of each parameter, in the units of the ParametricModel.
struct ParameterBox
{
  std::vector<double> low;
  std::vector<double> high;
};

/// How a reduced model is built.
struct ReducedOptions
{
  int num_modes = 12; ///< lowest elastic modes it gives
  double tolerance =
      1e-4; ///< aimed-at relative error of each frequency against the full solve: well below that of the mesh
  int max_snapshots = 24; ///< full solves at most; a reduced model that stops there states the error it has
};

/// Modes from a reduced model.
struct ReducedModes
{
  Eigen::VectorXd frequencies_hz; ///< ascending, (n) [Hz]
  /// Estimate of the distance to the full solve on the same mesh, meant to be exceeded by one in twenty at most, (n)
  /// [Hz].
  Eigen::VectorXd errors_hz;
  Eigen::MatrixXd shares; ///< the modes in the vectors of the reduced model, (num_vectors, n), unit modal mass
  double mass = 0.0;      ///< of plate, bars and point masses [kg]

  /// Greatest relative error estimate [-].
  [[nodiscard]] double largest_error() const;
};

/// Figures of a reduced model.
struct ReducedFigures
{
  int num_snapshots = 0;       ///< full solves whose modes it holds
  int num_checks = 0;          ///< full solves the error estimate was held against
  int num_vectors = 0;         ///< of its basis, rigid motions included
  int num_stiffness_terms = 0; ///< matrices the stiffness is combined of
  int num_mass_terms = 0;
  double effectivity = 0.0; ///< true error over estimate: greatest ratio met while building, part of the estimate since
  double largest_error = 0.0; ///< greatest relative error estimate on the points looked at [-]
  bool converged = false;     ///< largest_error is within the tolerance
};

/// Modes of a plate in a thousandth of the time of a full solve, anywhere in a box of parameters on one mesh.
///
/// Stiffness and mass are combined of those at chosen points, with coefficients from the matrices of a few elements;
/// the shapes are combined of the modes at snapshots, which are placed where the error estimate is worst. What the
/// parameters may change: materials, thickness and angles of plies, of patches too, the thickness map, height and
/// material of bars, grams of point masses, density of the air. What they may not: nodes of the mesh, edges of patches,
/// supports, places of bars and masses.
///
/// Of laid plies the combination is exact; of carved wood, graduated plates and the torsion of bars it is fitted, and what
/// it misses is part of the error stated. The mass of the air does not depend on the layup and is computed once.
///
/// The design is asked for parts of models in modes(), so it must outlive this object, and one modes() runs at a time.
/// Cost of building: about 7 full solves for one parameter, 25 for three; of modes(): a millisecond or a few.
/// @source reduced basis and greedy choice: [Rozza2008]; sketched residual: [Balabanov2019]; pinned by
///   tests/unit/solvers/reduced_model_test.cpp
class ReducedModel
{
public:
  /// @throws InvalidInput      if the box is empty or the parameters move nodes, patches, supports or masses
  /// @throws NumericalFailure  if the modes at a snapshot do not converge
  ReducedModel(ParametricModel& design, ParameterBox box, const ReducedOptions& options = {});
  ~ReducedModel();
  ReducedModel(ReducedModel&&) noexcept;
  ReducedModel& operator=(ReducedModel&&) noexcept;

  /// Modes at a point of the box.
  ///
  /// @throws InvalidInput if the point lies outside the box or there is no such design
  [[nodiscard]] ReducedModes modes(std::span<const double> parameters) const;

  /// Derivatives of the frequencies by the parameters, (n, parameters) [Hz per unit of the parameter].
  ///
  /// Exact for the reduced model up to differences of the coefficients; of modes that coincide only the sum means
  /// anything.
  [[nodiscard]] Eigen::MatrixXd slopes(std::span<const double> parameters, const ReducedModes& modes) const;

  /// The modes as vectors of unknowns of model(), (num_equations, n).
  [[nodiscard]] Eigen::MatrixXd shapes(const ReducedModes& modes) const;

  /// Modal assurance between modes of two points, as modal_assurance() with the weights of model(), (n of a, n of b).
  [[nodiscard]] Eigen::MatrixXd assurance(const ReducedModes& a, const ReducedModes& b) const;

  [[nodiscard]] const Model& model() const; ///< in the middle of the box
  [[nodiscard]] const DofMap& dofs() const; ///< of model()
  [[nodiscard]] const ParameterBox& box() const;
  [[nodiscard]] const ReducedFigures& figures() const;
  [[nodiscard]] std::string summary() const;

private:
  struct Implementation;
  std::unique_ptr<Implementation> implementation_;
};

} // namespace plate
