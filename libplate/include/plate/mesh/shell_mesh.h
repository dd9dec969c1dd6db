// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <array>
#include <string>
#include <vector>

namespace plate
{

/// Boundary edges of a mesh that belong together, e.g. the outline or one soundhole.
struct EdgeGroup
{
  std::string name; ///< "outline", "hole 1", ...; a rectangle's sides are "x-", "x+", "y-", "y+" (no "outline" then)
  /// Node indices of each cubic edge: end, two inner nodes, end; the plate lies to the left of the edge.
  std::vector<std::array<int, 4>> edges;
};

/// Where a bar is glued to the plate: triangles under it and the distance along the bar at their nodes.
struct BarFootprint
{
  std::vector<int> triangles; ///< indices into ShellMesh::triangles
  std::vector<double>
      station; ///< (num_nodes) distance from the middle of the bar along its axis, planform; 0 elsewhere [m]
  Eigen::Vector3d axis =
      Eigen::Vector3d::UnitX(); ///< unit, along the bar in the plane of the rim, towards the neck [-]
};

/// Curved shell mesh of cubic triangles: plain data, nodes on the mid-surface.
struct ShellMesh
{
  static constexpr int nodes_per_triangle = 10;

  std::vector<Eigen::Vector3d> nodes;   ///< positions on the mid-surface [m]
  std::vector<Eigen::Vector3d> normals; ///< unit normals of the true surface, outward [-]
  std::vector<double> thickness;        ///< thickness along the normal at the nodes [m]
  /// Per triangle what the true thickness has beyond the one interpolated from the nodes, as coefficients of
  /// QuarticBubbles [m]. Only error bars use it; empty where it is nothing or not known.
  std::vector<std::array<double, 5>> thickness_bubbles = {};
  /// Corners counter-clockwise seen from outside, then two nodes on edge 0-1, 1-2, 2-0 (walking along the edge),
  /// centre.
  std::vector<std::array<int, nodes_per_triangle>> triangles;
  std::vector<EdgeGroup> boundary; ///< each boundary edge in exactly one group
  std::vector<BarFootprint> bars;  ///< none or one per bar
};

} // namespace plate
