// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/assembly/model.h>
#include <plate/assembly/strut.h>

#include <Eigen/Geometry>

#include <string>
#include <vector>

namespace plate
{

/// One wall of a body: a plate in axes of its own, and where these lie.
struct BodyPart
{
  std::string name; ///< e.g. "top", "back", "ribs"; several parts may share one
  Model model;
  Eigen::Isometry3d placement = Eigen::Isometry3d::Identity(); ///< from the axes of the part to those of the body [m]
};

/// A node of a part.
struct PartNode
{
  std::size_t part = 0;
  int node = 0;
};

/// Walls glued along common nodes, with struts between and rigid bodies on them: plain data.
///
/// Each part is a model like any other and keeps its unknowns; a joint gives its nodes one displacement and one
/// rotation. Where the walls of a joint lie in one plane the rotation has two components, elsewhere three: every wall
/// takes the two in its tangent plane and leaves the third to the others, so no stiffness has to be invented for the
/// rotation about a normal. What a wall does not resist, the other resists. A wall is free to twist along a joint
/// against the others as along a support that holds displacements: worth about its thickness over its width.
struct Body
{
  std::vector<BodyPart> parts;
  std::vector<std::vector<PartNode>> joints; ///< nodes at one place, at least two; each node in one joint at most
  std::vector<Strut> struts = {};
  std::vector<FixedMass> masses = {};
};

/// Joints of all nodes that lie at one place, whatever their parts.
[[nodiscard]] std::vector<std::vector<PartNode>> nodes_at_one_place(const std::vector<BodyPart>& parts);

/// One part within an assembled body.
struct PartSystem
{
  DofMap dofs;            ///< of the part's own model
  SparseMatrix from_body; ///< its unknowns from those of the body, (num_equations of the part, of the body)
  SparseMatrix K;         ///< stiffness of the part alone, lower triangle, as System::K
  SparseMatrix M;         ///< mass of the part alone, lower triangle, as System::M
  double mass = 0.0;      ///< [kg]
};

/// A body assembled: to the solvers a system like any other.
///
/// `system.dofs` numbers the places of the body: displacements in the axes of the body, then two or three rotations.
/// Shapes of one part, for energies, losses, names and pictures with its model: parts[i].from_body * shape.
struct BodySystem
{
  System system;
  std::vector<PartSystem> parts; ///< as Body::parts
};

/// Stiffness and mass of a body.
///
/// Supports of the parts hold the places of their nodes; where one holds rotations all are held. The same input gives
/// the same bits, whatever num_threads(). Cost: about twice that of assembling its parts.
/// @throws InvalidInput if a part, joint or strut is inconsistent, if the nodes of a joint lie apart, or if a support
///   holds a single direction that is no axis of the body
[[nodiscard]] BodySystem assemble(const Body& body);

/// Share of each part in the strain energy of shapes, then that of all struts: (num_parts + 1, n) [-].
///
/// @param shapes  vectors of unknowns of the body, (num_equations, n), none of them rigid
[[nodiscard]] Eigen::MatrixXd energy_shares(const BodySystem& body, const Eigen::MatrixXd& shapes);

} // namespace plate
