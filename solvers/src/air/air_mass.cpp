// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/air_mass.h>

#include "panel_mesh.h"
#include "panel_system.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>

namespace plate
{

namespace
{

/// Leaves 1 % of the mass of a disc (tests/unit/solvers/air_mass_test.cpp).
constexpr std::size_t most_panels = 1500;

} // namespace

Eigen::MatrixXd air_mass(const ShellMesh& mesh, const Eigen::MatrixXd& w, double density)
{
  if (w.rows() != static_cast<Eigen::Index>(mesh.nodes.size()))
    throw InvalidInput(message("air_mass: displacements of ", mesh.nodes.size(), " nodes are needed; got ", w.rows()));
  if (!(density >= 0.0))
    throw InvalidInput(message("air_mass: the density must not be negative; got ", density, " kg/m3"));
  const PanelMesh panels = coarsened(panels_of(mesh, 4 * most_panels), most_panels);
  const Eigen::MatrixXd weighted = nodal_areas(mesh).asDiagonal() * w;
  const Eigen::MatrixXd loads = interpolation(panels, mesh.nodes).transpose() * weighted;
  return density * moved_volume(panels, loads);
}

} // namespace plate
