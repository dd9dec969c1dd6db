// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/body.h>
#include <plate/assembly/nodal_unknowns.h>

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate
{

/// Displacements of the nodes of each part, or forces on them, in the axes of the part: as Body::parts.
using PartUnknowns = std::vector<NodalUnknowns>;

/// A force that a rigid body glued to nodes of a part, e.g. a neck to its block, passes on to them. Each bears as much
/// of force and moment as its share of the mid-surface.
struct RigidForce
{
  std::size_t part;       ///< index into Body::parts
  std::vector<int> nodes; ///< of that part, not all on one line
  Eigen::Vector3d at;     ///< on the line of the force, in the axes of the body [m]
  Eigen::Vector3d force;  ///< in the axes of the body [N]
};

/// No force at any node.
[[nodiscard]] PartUnknowns no_load(const Body& body);

/// Adds to the forces on the nodes of a part.
///
/// @throws InvalidInput if there is no such part, or its nodes lie on one line
void add_load(const Body& body, const RigidForce& load, PartUnknowns& forces);

/// What forces on the nodes do to the unknowns of the body, as a vector.
[[nodiscard]] Eigen::VectorXd on_unknowns(const BodySystem& system, const PartUnknowns& forces);

/// Displacements of all nodes from a vector of unknowns of the body; held ones are zero.
[[nodiscard]] PartUnknowns at_nodes(const BodySystem& system, const Eigen::Ref<const Eigen::VectorXd>& x);

/// Force and moment about the origin, in the axes of the body [N, N m].
[[nodiscard]] Eigen::Matrix<double, 6, 1> resultant(const Body& body, const PartUnknowns& forces);

/// What each strut presses with on the part under its first foot, in the axes of the body; the part under the second
/// feels the opposite force [N].
[[nodiscard]] std::vector<Eigen::Vector3d> strut_forces(const Body& body, const BodySystem& system,
                                                        const Eigen::Ref<const Eigen::VectorXd>& x);

/// Displacements less the rigid motion of the whole body that fits those of some parts best, each node with its area.
///
/// @param rest  indices of the parts whose mean is to rest, at least one
[[nodiscard]] Eigen::VectorXd relative_to(const Body& body, const BodySystem& system, std::span<const std::size_t> rest,
                                          const Eigen::Ref<const Eigen::VectorXd>& x);

/// Geometric stiffness of all walls in a state of displacement, lower triangle, same pattern as System::K [N/m].
///
/// As of loads that keep their directions. That of struts is left out: they stand far below their own buckling load.
[[nodiscard]] SparseMatrix geometric_stiffness(const Body& body, const BodySystem& system,
                                               const PartUnknowns& displacements);

} // namespace plate
