// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/materials/air.h>
#include <plate/solvers/cavity_modes.h>

#include <Eigen/Core>

#include <string>
#include <vector>

namespace plate
{

/// A part of a structure whose energy is told apart, by its matrices between the structure's modes.
struct EnergyPart
{
  std::string name;
  Eigen::MatrixXd stiffness; ///< shapes^T K_part shapes, (n, n) [1/s2]; those of all parts make diag(w^2)
  Eigen::MatrixXd mass;      ///< shapes^T M_part shapes, (n, n) [-]; those of all parts make the identity
};

/// A structure in vacuo: modes of unit modal mass, rigid motions among them with 0 Hz.
struct StructureModes
{
  Eigen::VectorXd frequencies_hz;     ///< (n) [Hz]
  Eigen::VectorXd loss;               ///< loss factors, (n), or empty: none [-]
  std::vector<EnergyPart> parts = {}; ///< none: the structure is one part
};

/// Outflows of holes: unknowns with mass alone.
struct HoleUnknowns
{
  Eigen::MatrixXd inertance; ///< over density, of what is not in AirMoments::inertance, (h, h), (0, 0) for none [1/m]
  Eigen::VectorXd loss = {}; ///< resistance over inertia, R / (w density inertance), (h), or empty: none [-]
};

/// Modes of a structure with enclosed air; a mode has unit modal mass, air and holes with it.
struct CoupledModes
{
  Eigen::VectorXd frequencies_hz;       ///< ascending, without those of rigid motion, (m) [Hz]
  Eigen::MatrixXd structure;            ///< amplitudes of the structure's modes, (n, m)
  Eigen::MatrixXd outflow;              ///< of the holes, (h, m) [m3/sqrt(kg)]
  Eigen::MatrixXd cavity;               ///< amplitudes of the cavity's modes, pressure = -sqrt(rho) c w q psi, (k, m)
  Eigen::VectorXd volume_change;        ///< of the air inside: what the walls gain less what flows in, (m)
  Eigen::MatrixXd strain_share;         ///< of the potential energy: each part, then the air; (parts + 1, m)
  Eigen::MatrixXd kinetic_share;        ///< each part, then the air with the holes; (parts + 1, m)
  std::vector<std::string> share_names; ///< "structure" or the names of the parts, then "air"
  Eigen::VectorXd structural_loss;      ///< from the loss of the structure's modes, (m) [-]
  Eigen::VectorXd hole_loss;            ///< from friction in the holes, (m) [-]
  Eigen::VectorXd radiation_loss;       ///< from sound, as of a monopole, (m) [-]
  /// Motions without energy: rigid ones, and flow in at one hole and out at another; (r) [Hz].
  Eigen::VectorXd rigid_frequencies_hz;
  Eigen::MatrixXd rigid_motions; ///< structure, then outflows, of unit modal mass, (n + h, r)

  [[nodiscard]] Eigen::VectorXd loss() const { return structural_loss + hole_loss + radiation_loss; }
};

/// Modes of a structure, the air it encloses and the holes of it.
///
/// Symmetric with positive definite mass: the amplitude of a cavity mode is its compression, sqrt(rho) c times over its
/// wave number; the inertia of all cavity modes acts on the motions through AirMoments::inertance. The radiation is
/// that of a monopole in free air with the volume that body and holes displace together, right as long as the body is
/// small beside the wavelength over 2 pi (some 300 Hz for a body of 0.2 m).
/// @param moments  columns: the modes of the structure, then the holes
/// @throws InvalidInput      if sizes differ
/// @throws NumericalFailure  if the mass is not positive definite
/// @source symmetric form of the compression: derived beside the code; monopole [Pierce2019] sec. 4.3; pinned
///   by tests/unit/air/coupled_modes_test.cpp
[[nodiscard]] CoupledModes solve_coupled_modes(const StructureModes& structure, const HoleUnknowns& holes,
                                               const AirMoments& moments, const Air& air);

/// Pressures in the cavity while modes move with amplitude 1, (num_unknowns, m) [Pa/(m sqrt(kg))].
///
/// With the cavity modes left out as incompressible air, so that the pressure is right close to walls and holes too.
/// @param cavity  the modes that the moments were made of
/// @param flow    the loads that the moments were made of
/// @throws InvalidInput if sizes differ
[[nodiscard]] Eigen::MatrixXd cavity_pressures(const CavitySpace& space, const CavityModes& cavity,
                                               const Eigen::MatrixXd& flow, const CoupledModes& modes, const Air& air);

} // namespace plate
