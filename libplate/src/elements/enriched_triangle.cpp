// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/enriched_triangle.h>

#include "shell_terms.h"

#include <plate/elements/quadrature.h>

#include <span>
#include <vector>

namespace plate
{

namespace
{

using namespace shell_kinematics;

/// A quadrature point with nodal shape functions and bubbles there.
struct EnrichedPoint
{
  ShapePoint cubic;
  QuarticBubbles::Vector bubble;
  QuarticBubbles::Gradient gradient;
};

std::vector<EnrichedPoint> enriched_points(std::span<const TrianglePoint> rule)
{
  const std::vector<ShapePoint> cubic = shape_points(rule);
  std::vector<EnrichedPoint> points;
  for (std::size_t i = 0; i < rule.size(); ++i)
    points.push_back(
        {cubic[i], QuarticBubbles::value(rule[i].xi, rule[i].eta), QuarticBubbles::gradient(rule[i].xi, rule[i].eta)});
  return points;
}

std::span<const EnrichedPoint> enriched_quadrature(bool fine)
{
  static const std::vector<EnrichedPoint> usual_points = enriched_points(quartic_triangle_points());
  static const std::vector<EnrichedPoint> fine_points = enriched_points(fine_triangle_points());
  return fine ? fine_points : usual_points;
}

/// Puts nodes and bubbles in the order of the element; works on columns of values and of slopes alike.
template <class Nodes, class Bubbles, class Out>
void in_order(const Nodes& nodes, const Bubbles& bubbles, Out& out)
{
  constexpr int edges = EnrichedTriangle::first_edge_bubble;
  out.template topRows<edges>() = nodes.template topRows<edges>();
  out.template middleRows<3>(edges) = bubbles.template topRows<3>();
  out.row(EnrichedTriangle::num_shared_functions) = nodes.row(edges);
  out.template bottomRows<2>() = bubbles.template bottomRows<2>();
}

FieldPoint<num_enriched> enriched_field(const ShellPoint& p, const EnrichedPoint& at)
{
  FieldPoint<num_enriched> field;
  in_order(p.N, at.bubble, field.N);
  in_order(p.dN, at.gradient * p.to_frame, field.dN);
  return field;
}

Rotations<num_enriched> enriched_rotations(const ShellTriangleNodes& nodes, const MaterialAxes& axes)
{
  const Rotations<num_nodes> of_node = node_rotations(nodes, axes);
  Rotations<num_enriched> rotations;
  const auto rotation = [&](int function) { return rotations.middleCols<2>(2 * function); };
  for (int i = 0; i < num_nodes; ++i)
    rotation(EnrichedTriangle::function_of_node[static_cast<std::size_t>(i)]) = of_node.middleCols<2>(2 * i);
  for (int edge = 0; edge < 3; ++edge)
  {
    const Eigen::Vector3d mean = (nodes.normal.col(edge) + nodes.normal.col((edge + 1) % 3)).normalized();
    rotation(EnrichedTriangle::first_edge_bubble + edge) = director_rotation(mean, axes);
  }
  rotation(num_enriched - 2) = of_node.rightCols<2>();
  rotation(num_enriched - 1) = of_node.rightCols<2>();
  return rotations;
}

} // namespace

QuarticBubbles::Vector QuarticBubbles::value(double xi, double eta)
{
  const std::array<double, 3> L = {1.0 - xi - eta, xi, eta};
  Vector out;
  for (int edge = 0; edge < 3; ++edge)
  {
    const double a = L[static_cast<std::size_t>(edge)];
    const double b = L[static_cast<std::size_t>((edge + 1) % 3)];
    out(edge) = 81.0 * a * b * (3.0 * a - 1.0) * (3.0 * b - 1.0);
  }
  const double centre = 81.0 * L[0] * L[1] * L[2];
  out(3) = centre * (L[0] - L[1]);
  out(4) = centre * (2.0 * L[2] - L[0] - L[1]);
  return out;
}

QuarticBubbles::Gradient QuarticBubbles::gradient(double xi, double eta)
{
  const std::array<double, 3> L = {1.0 - xi - eta, xi, eta};
  Eigen::Matrix<double, num_functions, 3> g = Eigen::Matrix<double, num_functions, 3>::Zero(); // along L as independent
  for (int edge = 0; edge < 3; ++edge)
  {
    const int next = (edge + 1) % 3;
    const double a = L[static_cast<std::size_t>(edge)];
    const double b = L[static_cast<std::size_t>(next)];
    g(edge, edge) = 81.0 * b * (3.0 * b - 1.0) * (6.0 * a - 1.0);
    g(edge, next) = 81.0 * a * (3.0 * a - 1.0) * (6.0 * b - 1.0);
  }
  const double centre = 81.0 * L[0] * L[1] * L[2];
  const Eigen::RowVector3d slope = 81.0 * Eigen::RowVector3d(L[1] * L[2], L[0] * L[2], L[0] * L[1]);
  g.row(3) = slope * (L[0] - L[1]) + centre * Eigen::RowVector3d(1.0, -1.0, 0.0);
  g.row(4) = slope * (2.0 * L[2] - L[0] - L[1]) + centre * Eigen::RowVector3d(-1.0, -1.0, 2.0);
  Gradient out;
  out.col(0) = g.col(1) - g.col(0);
  out.col(1) = g.col(2) - g.col(0);
  return out;
}

EnrichedTriangle::Values EnrichedTriangle::values(double xi, double eta)
{
  Values out;
  in_order(CubicTriangle::shape(xi, eta), QuarticBubbles::value(xi, eta), out);
  return out;
}

void EnrichedTriangle::matrices(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                                const TriangleParts& parts, Matrix& K, Matrix& M)
{
  const Rotations<num_enriched> rotations = enriched_rotations(nodes, material.axes);
  std::vector<PlacedPly> plies;
  ProductSum<num_enriched> stiffness(K);
  ProductSum<num_enriched> mass(M);
  for (const EnrichedPoint& at : enriched_quadrature(parts.patch_edge))
  {
    const ShellPoint p = shell_point(nodes, at.cubic, material.axes);
    const FieldPoint<num_enriched> field = enriched_field(p, at);
    plies_at(p, material, parts, plies);
    visit_energy(p, field, rotations, material, parts, plies,
                 [&](double area, const auto& B, const auto& C) { stiffness.add(area, B, C); });
    visit_inertia(p, field, rotations, material, parts, plies,
                  [&](double area, const auto& B, const auto& C) { mass.add(area, B, C); });
  }
  stiffness.finish();
  mass.finish();
}

} // namespace plate
