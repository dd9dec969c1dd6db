// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/body_air.h>
#include <plate/assembly/body.h>
#include <plate/solvers/coupled_modes.h>

#include <Eigen/Core>

#include <string>
#include <vector>

namespace plate
{

/// How many motions the modes are made of.
struct BodyOptions
{
  int structure_modes = 120; ///< in vacuo: 30 coupled modes of a viola are then within 0.1 % of those of twice as many
  int cavity_modes = 24;     ///< of rigid walls; all others act as incompressible air
  int pressure_degree = 2;   ///< through the height, see CavitySpace
  /// Lowest coupled modes whose shapes are to be those of all unknowns of the structure, not of a few motions:
  /// derivatives need them, their error being of first order in that of the shapes.
  int refined_modes = 0;
};

/// Modes of a body with the air in it.
///
/// Columns of `structure` are motions of unit modal mass: elastic modes, static shapes, rigid motions.
struct BodyModes
{
  CoupledModes coupled;           ///< parts of energies: those of BodyPart::name, linings and blocks as "ribs"; "post"
  Eigen::MatrixXd structure;      ///< unknowns of the body in each motion, (num_equations, n)
  Eigen::MatrixXd drives;         ///< motion of each drive in each motion, (d, n) [1/sqrt(kg)]
  Eigen::MatrixXd shapes;         ///< unknowns of the body in each coupled mode, (num_equations, m)
  Eigen::MatrixXd pressures;      ///< mean over the height at the nodes of the cavity, (num_nodes, m) [Pa/(m sqrt(kg))]
  Eigen::MatrixXd cavity_shapes;  ///< the cavity modes the same way, (num_nodes, k)
  Eigen::VectorXd cavity_hz;      ///< of rigid walls, (k) [Hz]
  Eigen::VectorXd rigid_walls_hz; ///< of the air with the holes between rigid walls, ascending [Hz]
  double volume;                  ///< of the air [m3]
  double conductance;             ///< of the holes, in a large wall with one pressure inside; 0 without any [m]
};

/// Modes of a structure and the air it encloses: modes in vacuo with the static shapes under one pressure and the
/// drives' forces, coupled to the modes of the cavity and the flow through its holes.
///
/// @param drives  unknowns of the body times these are the motions of places of interest, such as the bridge's feet,
///                (d, num_equations)
/// @throws InvalidInput      if sizes do not fit, or as the parts of the way
/// @throws NumericalFailure  if modes do not converge, or as the parts of the way
/// @source pinned by tests/convergence/body_air_test.cpp
[[nodiscard]] BodyModes solve_body_modes(const Body& body, const BodySystem& assembled, const BodyAir& air,
                                         const Eigen::MatrixXd& drives, const BodyOptions& options = {});

} // namespace plate
