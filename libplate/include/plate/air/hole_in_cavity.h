// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/cavity_space.h>
#include <plate/air/hole_flow.h>

namespace plate
{

/// Holes of the top or the back of a meshed cavity, each with its outflow as one unknown [m3].
///
/// Each piece of inertia is counted once: `flow` carries what the mesh can show, the air that streams to the hole from
/// further than a few `blur`; `inertance` all else: the outer side with its interaction, the neck, and the inner side
/// close to the hole.
struct HolesInCavity
{
  Eigen::MatrixXd flow;      ///< loads of unit outflows, as wall_flow(), (num_unknowns, n)
  Eigen::MatrixXd inertance; ///< over density, of what the mesh does not show, (n, n) [1/m]
};

/// Joins holes to a meshed cavity; the result does not depend on `blur` or the mesh as long as the mesh shows the blur.
///
/// The flow leaves the mesh spread over the height and blurred over the planform by a Gaussian. What this takes from a
/// flow that leaves through the hole is found for a layer of the height at the hole: the difference of the potentials
/// of the two is smooth and short of range.
/// @param holes  as seen along z, in the x and y of the body, all in the same plate
/// @param blur   standard deviation: about the distance of nodes, less than half the distance to the ribs [m]
/// @throws InvalidInput if a hole lies beside the cavity, or blur is not positive
/// @source layer between rigid faces: images, series [Gradshteyn2007] 8.526; pinned by
///   tests/unit/air/hole_in_cavity_test.cpp
[[nodiscard]] HolesInCavity holes_in_cavity(const CavitySpace& space, const HoleFlow& holes, double blur = 5e-3);

} // namespace plate
