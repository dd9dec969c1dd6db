// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace plate
{

/// Whether a group of boundary edges is that of a hole.
[[nodiscard]] bool is_hole(const EdgeGroup& group);

/// Evenly taken nodes along the edge of every hole, at most `most` of each.
[[nodiscard]] std::vector<std::size_t> hole_nodes(const ShellMesh& mesh, int most);

/// Node of the sharpest outward corner of the plate, if one turns by more than 30 degrees.
[[nodiscard]] std::optional<std::size_t> sharpest_corner(const ShellMesh& mesh);

/// Node of the plate's end at -x.
[[nodiscard]] std::size_t lower_end(const ShellMesh& mesh);

/// Two places on a line along x through the centre of gravity, at like distances to either side of it; nothing if holes
/// leave no room.
[[nodiscard]] std::optional<std::array<Eigen::Vector2d, 2>> finger_places(const ShellMesh& mesh,
                                                                          const Eigen::Vector2d& centre_of_gravity);

/// Place of a node in the planform [m].
[[nodiscard]] Eigen::Vector2d planform_place(const ShellMesh& mesh, std::size_t node);

/// A round area [m].
[[nodiscard]] PlanformRegion disc(const Eigen::Vector2d& centre, double diameter);

} // namespace plate
