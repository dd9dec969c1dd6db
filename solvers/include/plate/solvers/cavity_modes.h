// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/cavity_space.h>
#include <plate/materials/air.h>
#include <plate/solvers/modal.h>

#include <Eigen/Core>

namespace plate
{

/// Modes of the air in a rigid cavity without holes.
struct CavityModes
{
  Eigen::VectorXd frequencies_hz; ///< ascending, without the uniform pressure at 0 Hz, (n) [Hz]
  Eigen::MatrixXd shapes;         ///< pressures psi with integral of psi^2 over the cavity = 1, (num_unknowns, n)
  Eigen::VectorXd residuals;      ///< as in ModalResult, (n) [-]
  double volume = 0.0;            ///< [m3]
  Status status = Status::not_converged;
};

/// Lowest modes of the air in a rigid cavity: shift-invert Lanczos, as for plates.
///
/// @throws InvalidInput      if more modes are asked for than the mesh can carry
/// @throws NumericalFailure  if the matrix cannot be factorised
/// @source tests/reference/data/air.csv; pinned by tests/unit/air/cavity_modes_test.cpp
[[nodiscard]] CavityModes solve_cavity_modes(const CavitySpace& space, const Air& air,
                                             const ModalOptions& options = {.num_modes = 40});

/// Pressures of incompressible air for flows out of a cavity, over density and acceleration: what the modes left out
/// do.
///
/// A source spread evenly over the cavity makes up for the volume that leaves; the mean of each pressure is zero.
/// @param flow  (num_unknowns, m), as from wall_flow()
/// @return (num_unknowns, m) [m2 for flows in m3]
/// @throws InvalidInput if the sizes differ
[[nodiscard]] Eigen::MatrixXd static_pressures(const CavitySpace& space, const Eigen::MatrixXd& flow);

/// What motions that move air do to a cavity. Columns: motions of walls, and outflows of holes.
struct AirMoments
{
  double volume;                  ///< of the cavity [m3]
  Eigen::VectorXd volume_change;  ///< that each motion draws from the cavity, (m) [m3]
  Eigen::VectorXd frequencies_hz; ///< of the cavity modes, (n) [Hz]
  Eigen::MatrixXd b;              ///< integrals of psi_i times the outward motion j, (n, m) [m3/2]
  Eigen::MatrixXd inertance;      ///< of the air, incompressible but for its mean density, over density, (m, m) [m5]
};

/// Moments of motions from their loads on the cavity (wall_flow(), holes_in_cavity()).
///
/// `inertance` holds all the modes of the cavity that there are, by a static solve: few modes suffice.
/// @param flow  (num_unknowns, m)
/// @throws InvalidInput if the sizes differ
[[nodiscard]] AirMoments air_moments(const CavitySpace& space, const CavityModes& modes, const Eigen::MatrixXd& flow);

/// Moments for one uniform pressure: the air as a spring without inertia of its own.
[[nodiscard]] AirMoments uniform_pressure(double volume, const Eigen::VectorXd& volume_change);

} // namespace plate
