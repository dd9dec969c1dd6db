// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/enriched_triangle.h>

#include "enriched_stiffness.h"
#include "gradient_terms.h"

#include <plate/elements/quadrature.h>
#include <plate/elements/quartic_bubbles.h>

#include <Eigen/Cholesky>

#include <vector>

namespace plate
{

namespace
{

using namespace shell_kinematics;

constexpr int num_bubbles = QuarticBubbles::num_functions;

/// Fields of all modes side by side, field by field: column f n + m is field f of mode m.
using FieldRows = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// Three rows per point: slopes along xi and eta and values of the functions that carry the fields.
struct EnrichedRule
{
  std::vector<ShapePoint> points;
  Eigen::Matrix<double, Eigen::Dynamic, num_nodes> nodes;
  Eigen::Matrix<double, Eigen::Dynamic, num_bubbles> bubbles;
};

EnrichedRule enriched_rule(std::span<const TrianglePoint> points)
{
  EnrichedRule rule{.points = shape_points(points), .nodes = {}, .bubbles = {}};
  const auto num_rows = static_cast<Eigen::Index>(3 * points.size());
  rule.nodes.resize(num_rows, num_nodes);
  rule.bubbles.resize(num_rows, num_bubbles);
  Eigen::Index row = 0;
  for (const TrianglePoint& point : points)
  {
    rule.nodes.middleRows<3>(row) << CubicTriangle::gradient(point.xi, point.eta).transpose(),
        CubicTriangle::shape(point.xi, point.eta).transpose();
    rule.bubbles.middleRows<3>(row) << QuarticBubbles::gradient(point.xi, point.eta).transpose(),
        QuarticBubbles::value(point.xi, point.eta).transpose();
    row += 3;
  }
  return rule;
}

const EnrichedRule& enriched_quadrature(bool fine)
{
  static const EnrichedRule usual_rule = enriched_rule(quartic_triangle_points());
  static const EnrichedRule fine_rule = enriched_rule(fine_triangle_points());
  return fine ? fine_rule : usual_rule;
}

/// Director changes of the functions in the order of EnrichedStiffness.
Rotations<num_enriched_functions> enriched_rotations(const ShellTriangleNodes& nodes,
                                                     const Rotations<num_nodes>& of_node, const MaterialAxes& axes)
{
  Rotations<num_enriched_functions> rotations;
  for (int edge = 0; edge < 3; ++edge)
  {
    const Eigen::Vector3d mean = (nodes.normal.col(edge) + nodes.normal.col((edge + 1) % 3)).normalized();
    rotations.middleCols<6>(6 * edge) << of_node.middleCols<4>(6 + 4 * edge), director_rotation(mean, axes);
  }
  rotations.rightCols<6>() << of_node.rightCols<2>(), of_node.rightCols<2>(), of_node.rightCols<2>();
  return rotations;
}

/// Fields of the modes at the nodes, (10, 6 n).
FieldRows nodal_fields(const ShellTriangle::Displacements& shapes, const Rotations<num_nodes>& rotations)
{
  const Eigen::Index n = shapes.cols();
  FieldRows fields(num_nodes, num_fields * n);
  for (int i = 0; i < num_nodes; ++i)
  {
    Eigen::Map<FieldRows>(fields.row(i).data(), 3, n) = shapes.middleRows<3>(5 * i);
    Eigen::Map<FieldRows>(fields.row(i).data() + 3 * n, 3, n).noalias() =
        rotations.middleCols<2>(2 * i).lazyProduct(shapes.middleRows<2>(5 * i + 3));
  }
  return fields;
}

/// Forces on the gradients at all points that the modes leave over, and the energies of the modes.
FieldRows leftover_forces(const EnrichedRule& rule, const ShellTriangleNodes& nodes, const ShellMaterial& material,
                          const TriangleParts& parts, const TriangleModes& modes, const FieldRows& gradients,
                          EnrichedTriangle& out)
{
  const Eigen::Index n = modes.eigenvalues.size();
  FieldRows forces = FieldRows::Zero(gradients.rows(), gradients.cols());
  std::vector<PlacedPly> plies;
  Eigen::Index row = 0;
  for (const ShapePoint& at : rule.points)
  {
    ShellPoint p = shell_point(nodes, at, material.axes);
    p.thickness += nodes.thickness_bubbles * rule.bubbles.row(row + 2).transpose();
    plies_at(p, material, parts, plies);
    const Eigen::Map<const FieldRows> gradient(gradients.row(row).data(), num_gradients, n);
    Eigen::Map<FieldRows> force(forces.row(row).data(), num_gradients, n);
    visit_gradient_energy(p, material, parts, plies,
                          [&](double area, const auto& B, const auto& C)
                          {
                            const FieldRows strain = B.lazyProduct(gradient);
                            const FieldRows stress = (area * C).eval().lazyProduct(strain);
                            out.twice_strain += strain.cwiseProduct(stress).colwise().sum().transpose();
                            force -= B.transpose().lazyProduct(stress);
                          });
    visit_gradient_inertia(p, material, parts, plies,
                           [&](double area, const auto& B, const auto& C)
                           {
                             const FieldRows motion = B.lazyProduct(gradient);
                             const FieldRows momentum = (area * C).eval().lazyProduct(motion);
                             out.twice_kinetic += motion.cwiseProduct(momentum).colwise().sum().transpose();
                             force += B.transpose().lazyProduct(momentum) * modes.eigenvalues.asDiagonal();
                           });
    row += 3;
  }
  return forces;
}

/// Forces on the fields of the bubbles, (5, 6 n), and the kinetic energy of point masses.
FieldRows bubble_forces(const EnrichedRule& rule, const FieldRows& forces, const FieldRows& fields,
                        const TriangleModes& modes, EnrichedTriangle& out)
{
  const Eigen::Index n = modes.eigenvalues.size();
  FieldRows on_bubbles = rule.bubbles.transpose() * forces;
  for (const TriangleMass& mass : modes.masses)
  {
    const FieldRows at_mass = CubicTriangle::shape(mass.xi, mass.eta).transpose() * fields;
    const Eigen::Map<const FieldRows> motion(at_mass.data(), 3, n);
    out.twice_kinetic += mass.mass * motion.colwise().squaredNorm().transpose();
    const FieldRows momentum = mass.mass * motion * modes.eigenvalues.asDiagonal();
    const QuarticBubbles::Vector value = QuarticBubbles::value(mass.xi, mass.eta);
    for (int bubble = 0; bubble < num_bubbles; ++bubble)
      Eigen::Map<FieldRows>(on_bubbles.row(bubble).data(), 3, n) += value(bubble) * momentum;
  }
  return on_bubbles;
}

/// Forces on the unknowns of one function.
Eigen::Matrix<double, 5, Eigen::Dynamic> on_unknowns(const double* forces, Eigen::Index num_modes,
                                                     const Matrix32d& rotation)
{
  const Eigen::Map<const FieldRows> on_fields(forces, num_fields, num_modes);
  Eigen::Matrix<double, 5, Eigen::Dynamic> out(5, num_modes);
  out.topRows<3>() = on_fields.topRows<3>();
  out.bottomRows<2>() = rotation.transpose() * on_fields.bottomRows<3>();
  return out;
}

/// Eliminates what lies inside the triangle.
void condense(const EnrichedStiffness& K, const EnrichedTriangle::EdgeVectors& r_inner, EnrichedTriangle& out)
{
  const Eigen::LLT<EnrichedStiffness::Block> factor(K.inner);
  const EnrichedTriangle::EdgeVectors y = factor.matrixL().solve(r_inner);
  out.inner = y.colwise().squaredNorm().transpose();
  for (std::size_t edge = 0; edge < 3; ++edge)
  {
    const EnrichedStiffness::Block X = factor.matrixL().solve(K.inner_edge[edge]);
    out.edges[edge].stiffness = K.edge[edge] - X.transpose() * X;
    out.edges[edge].residuals -= X.transpose() * y;
  }
}

} // namespace

void enrich(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
            const TriangleModes& modes, EnrichedTriangle& out)
{
  const Eigen::Index n = modes.eigenvalues.size();
  out.twice_strain = out.twice_kinetic = Eigen::VectorXd::Zero(n);
  const EnrichedRule& rule = enriched_quadrature(parts.patch_edge);
  const Rotations<num_nodes> of_node = node_rotations(nodes, material.axes);
  const FieldRows fields = nodal_fields(modes.shapes, of_node);
  const FieldRows gradients = rule.nodes * fields;
  const FieldRows forces =
      bubble_forces(rule, leftover_forces(rule, nodes, material, parts, modes, gradients, out), fields, modes, out);

  const Rotations<num_enriched_functions> rotations = enriched_rotations(nodes, of_node, material.axes);
  EnrichedStiffness K;
  enriched_stiffness(nodes, material, parts, rotations, K);
  for (int edge = 0; edge < 3; ++edge)
  {
    EnrichedTriangle::EdgeVectors& r = out.edges[static_cast<std::size_t>(edge)].residuals;
    r = EnrichedTriangle::EdgeVectors::Zero(EnrichedTriangle::num_edge_dofs, n);
    r.bottomRows<5>() = on_unknowns(forces.row(edge).data(), n, rotations.middleCols<2>(2 * (3 * edge + 2)));
  }
  EnrichedTriangle::EdgeVectors r_inner = EnrichedTriangle::EdgeVectors::Zero(EnrichedTriangle::num_edge_dofs, n);
  for (int bubble = 0; bubble < 2; ++bubble)
    r_inner.middleRows<5>(5 * (bubble + 1)) =
        on_unknowns(forces.row(3 + bubble).data(), n, rotations.middleCols<2>(2 * (10 + bubble)));
  condense(K, r_inner, out);
}

} // namespace plate
