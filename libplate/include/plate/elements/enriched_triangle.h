// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/shell_triangle.h>

#include <Eigen/Core>

#include <array>

namespace plate
{

/// What quartic polynomials have beyond cubic ones on the triangle (0,0), (1,0), (0,1), hierarchically: all five
/// functions vanish at the ten nodes of CubicTriangle.
///
/// Order: one per edge 0-1, 1-2, 2-0, which vanishes on the other edges and is the same seen from either end; two that
/// vanish on all edges.
/// @source hierarchical shape functions: [Zienkiewicz2005] sec. 4.10
struct QuarticBubbles
{
  static constexpr int num_functions = 5;
  using Vector = Eigen::Matrix<double, num_functions, 1>;
  using Gradient = Eigen::Matrix<double, num_functions, 2>;

  [[nodiscard]] static Vector value(double xi, double eta);
  [[nodiscard]] static Gradient gradient(double xi, double eta); ///< columns: derivatives along xi and eta
};

/// The ShellTriangle with displacements and rotations enriched to quartic polynomials on the same cubic geometry: what
/// is needed to see the error of the cubic element.
///
/// Fifteen functions with five unknowns each, those of a node of ShellTriangle. Their order puts what neighbours share
/// first: corners (3), nodes on the edges (6), bubbles of the edges (3); then the centre node and the two inner
/// bubbles. Rotations of an edge's bubble are about the tangents at the mean of the directors of its ends, so that
/// neighbours agree; those of inner bubbles about the tangents of the centre node.
struct EnrichedTriangle
{
  static constexpr int num_functions = 15;
  static constexpr int num_shared_functions = 12;
  static constexpr int num_dofs = 5 * num_functions;
  static constexpr int num_shared_dofs = 5 * num_shared_functions;
  using Matrix = Eigen::Matrix<double, num_dofs, num_dofs>;
  using Values = Eigen::Matrix<double, num_functions, 1>;

  /// Place among the functions of each node of a ShellTriangle; the bubble of edge k is function 9 + k.
  static constexpr std::array<int, ShellTriangle::num_nodes> function_of_node = {0, 1, 2, 3, 4, 5, 6, 7, 8, 12};
  static constexpr int first_edge_bubble = 9;

  /// All functions at a point.
  [[nodiscard]] static Values values(double xi, double eta);

  /// Stiffness [N/m, N, N m] and consistent mass [kg, kg m, kg m2], symmetric.
  ///
  /// Integrated by a rule of higher degree than ShellTriangle: on flat triangles the cubic part is the same, on curved
  /// ones the difference is the error of quadrature of ShellTriangle.
  static void matrices(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                       Matrix& K, Matrix& M);
};

} // namespace plate
