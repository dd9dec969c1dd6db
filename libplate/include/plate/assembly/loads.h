// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/nodal_unknowns.h>
#include <plate/core/units.h>
#include <plate/mesh/planform_region.h>

#include <Eigen/Core>

#include <functional>

namespace plate
{

/// A force on one point of the mid-surface. Deflections are finite there, stresses are not: spread it to judge
/// strength.
struct PointForce
{
  Eigen::Vector2d at;    ///< in the planform [m]
  Eigen::Vector3d force; ///< [N]
};

/// A force spread evenly over the part of a region that lies on the plate.
struct AreaForce
{
  PlanformRegion region;
  Eigen::Vector3d force; ///< in all [N]
};

/// A force spread evenly along the part of a straight line that lies on the plate.
struct LineForce
{
  Eigen::Vector2d from;  ///< [m]
  Eigen::Vector2d to;    ///< [m]
  Eigen::Vector3d force; ///< in all [N]
};

/// A bed of springs along z under a region, e.g. the end of a soundpost.
struct SupportBed
{
  PlanformRegion region;
  double stiffness; ///< in all, positive [N/m]
};

/// Force of strings on a bridge, 2 T sin(deflection / 2), towards the inside of the bend [N].
///
/// @param tension     of all strings [N]
/// @param deflection  angle by which they bend over the bridge
[[nodiscard]] double string_downforce(double tension, Angle deflection);

/// No force at any node.
[[nodiscard]] NodalUnknowns no_load(const ShellMesh& mesh);

/// Add to the forces on the nodes.
///
/// @throws InvalidInput if no part of the place lies on the plate
void add_load(const ShellMesh& mesh, const PointForce& load, NodalUnknowns& forces);
void add_load(const ShellMesh& mesh, const AreaForce& load, NodalUnknowns& forces);
void add_load(const ShellMesh& mesh, const LineForce& load, NodalUnknowns& forces);

/// Adds a force per area of the mid-surface, given at points of it [Pa].
void add_surface_load(const Model& model, const std::function<Eigen::Vector3d(const Eigen::Vector3d&)>& pressure,
                      NodalUnknowns& forces);

/// Adds the stiffness of a bed to K; places where it stands couple within triangles only, so that the pattern stays.
///
/// @throws InvalidInput if no part of the region lies on the plate or the stiffness is not positive
void add_support(const ShellMesh& mesh, const SupportBed& bed, System& system);

/// Force of the bed on the nodes in a state of displacement [N].
[[nodiscard]] NodalUnknowns support_forces(const ShellMesh& mesh, const SupportBed& bed,
                                           const NodalUnknowns& displacements);

} // namespace plate
