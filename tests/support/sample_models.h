// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/validation/sample_models.h>

#include <functional>

namespace plate::test
{

// Plates and materials of the validation cases serve other tests too.
using validation::biparabolic;
using validation::carbon_epoxy;
using validation::even_lines;
using validation::flat;
using validation::grid_mesh;
using validation::GridPlate;
using validation::isotropic;
using validation::lines_with_strips;
using validation::plate_model;
using validation::quarter_cut_spruce;
using validation::reference_balsa;
using validation::reference_carbon;
using validation::reference_spruce;
using validation::solid;
using validation::stack;
using validation::support_all_sides;
using validation::Surface;

/// Flat rectangle of equal cells [m].
[[nodiscard]] ShellMesh rectangle(double length, double width, int cells_x, int cells_y, double thickness);

/// Moves vertices inside a rectangle centred on the origin, at most `amount` of it; the outline stays.
///
/// Edges inside become curved.
void distort(ShellMesh& mesh, double length, double width, double amount);

/// Puts the nodes of every triangle back at thirds of straight edges: an irregular mesh of affine triangles.
void straighten_edges(ShellMesh& mesh);

/// A displacement field: of the mid-surface, and of the director.
struct Field
{
  std::function<Eigen::Vector3d(const Eigen::Vector3d& x)> displacement;    ///< [m]
  std::function<Eigen::Vector3d(const Eigen::Vector3d& x)> director_change; ///< tangential [-]
};

/// Unknowns of the nodes that a field gives a free plate, as a vector in the order of its equations.
[[nodiscard]] Eigen::VectorXd unknowns_of(const Model& model, const DofMap& dofs, const Field& field);

} // namespace plate::test
