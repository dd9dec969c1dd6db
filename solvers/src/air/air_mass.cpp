// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/air_mass.h>

#include "panel_mesh.h"
#include "panel_system.h"

#include <plate/core/error.h>

namespace plate
{

namespace
{

/// Leaves 0.6 % of the mass of a disc (tests/unit/solvers/air_mass_test.cpp).
constexpr std::size_t most_panels = 1000;

} // namespace

Eigen::MatrixXd air_mass(const ShellMesh& mesh, const Eigen::MatrixXd& w, double density)
{
  if (w.rows() != static_cast<Eigen::Index>(mesh.nodes.size()))
    throw InvalidInput(message("air_mass: displacements of ", mesh.nodes.size(), " nodes are needed; got ", w.rows()));
  if (!(density >= 0.0))
    throw InvalidInput(message("air_mass: the density must not be negative; got ", density, " kg/m3"));
  const PanelMesh fine = panels_of(mesh);
  const PressureSpace space = pressure_space(coarsened(fine, most_panels));
  const Eigen::MatrixXd weighted = vertex_areas(fine).asDiagonal() * w;
  const Eigen::MatrixXd loads = interpolation(space.panels, mesh.nodes).transpose() * weighted;
  return density * mass_per_density(space, loads);
}

} // namespace plate
