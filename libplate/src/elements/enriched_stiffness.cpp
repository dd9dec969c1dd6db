// SPDX-License-Identifier: MPL-2.0
#include "enriched_stiffness.h"

#include "gradient_terms.h"

#include <plate/elements/quadrature.h>
#include <plate/elements/quartic_bubbles.h>

#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace plate::shell_kinematics
{

namespace
{

constexpr int num_groups = 4; // three edges and the inside, three functions each
constexpr int per_group = 3;
constexpr int inside = 3;

/// Slopes along xi and eta and value of each function at a point.
using FunctionGradients = Eigen::Matrix<double, num_enriched_functions, 3>;

FunctionGradients function_gradients(const TrianglePoint& at)
{
  Eigen::Matrix<double, CubicTriangle::num_nodes, 3> nodes;
  nodes << CubicTriangle::gradient(at.xi, at.eta), CubicTriangle::shape(at.xi, at.eta);
  Eigen::Matrix<double, QuarticBubbles::num_functions, 3> bubbles;
  bubbles << QuarticBubbles::gradient(at.xi, at.eta), QuarticBubbles::value(at.xi, at.eta);
  FunctionGradients out;
  for (int edge = 0; edge < inside; ++edge)
    out.middleRows<per_group>(per_group * edge) << nodes.middleRows<2>(3 + 2 * edge), bubbles.row(edge);
  out.bottomRows<per_group>() << nodes.bottomRows<1>(), bubbles.bottomRows<2>();
  return out;
}

/// Integrals over the unit triangle of products of two functions, each its slope along xi, along eta or its value: nine
/// rows, the first function's index fastest. A column for each pair that EnrichedStiffness keeps.
struct ReferenceIntegrals
{
  struct Pair
  {
    int group; // of the column's function; the row's is the same or inside
    bool to_inside;
    int row; // in the group
    int column;
  };
  static constexpr int num_pairs = num_groups * per_group * per_group + inside * per_group * per_group;
  std::array<Pair, num_pairs> pairs;
  Eigen::Matrix<double, 9, num_pairs> integrals;
};

ReferenceIntegrals make_reference_integrals()
{
  ReferenceIntegrals out;
  std::size_t next = 0;
  for (int group = 0; group < num_groups; ++group)
    for (const bool to_inside : {false, true})
      for (int row = 0; row < per_group; ++row)
        for (int column = 0; column < per_group; ++column)
          if (group < inside || !to_inside)
            out.pairs[next++] = {group, to_inside, row, column};
  out.integrals.setZero();
  for (const TrianglePoint& point : quartic_triangle_points())
  {
    const FunctionGradients f = function_gradients(point);
    for (std::size_t i = 0; i < out.pairs.size(); ++i)
    {
      const ReferenceIntegrals::Pair& pair = out.pairs[i];
      const Eigen::Vector3d a = f.row(per_group * (pair.to_inside ? inside : pair.group) + pair.row);
      const Eigen::RowVector3d b = f.row(per_group * pair.group + pair.column);
      const Eigen::Matrix3d product = point.weight * a * b;
      out.integrals.col(static_cast<Eigen::Index>(i)) += Eigen::Map<const Eigen::Matrix<double, 9, 1>>(product.data());
    }
  }
  return out;
}

/// How much softer in shear the functions of an edge are made than they are, per square of the triangle's size over
/// that of the thickness. Bending of a plate far thinner than the triangles needs functions without shear; those of one
/// edge have none, and would look too stiff to take up the residual: shear is weighted by 1 / (1 + c S h^2 / D), as
/// stabilised plate elements do. Calibrated on a hinged beam at h/t from 2 to 150
/// (tests/unit/solvers/mode_errors_test.cpp); at the default size of a plate it is worth 1 or 2 %.
constexpr double shear_softening = 1e-3;

/// @param size_squared  of the triangle [m2]
GradientRows<num_strains> softened(const GradientRows<num_strains>& B, const StrainMatrix& C, double size_squared)
{
  const double bending = C.diagonal().segment<2>(3).sum();
  const double shear = C.diagonal().tail<2>().sum();
  GradientRows<num_strains> out = B;
  out.bottomRows<2>() /= std::sqrt(1.0 + shear_softening * size_squared * shear / bending);
  return out;
}

/// The twist of a bar has no part in this.
const GradientRows<1>& softened(const GradientRows<1>& B, const Eigen::Matrix<double, 1, 1>& /*torsion*/,
                                double /*size_squared*/)
{
  return B;
}

/// Energy per area of the unit triangle as a form of the gradients at the centre.
Eigen::Matrix<double, num_gradients, num_gradients>
centre_form(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts)
{
  static const std::vector<ShapePoint> centre = shape_points(std::array{TrianglePoint{1.0 / 3.0, 1.0 / 3.0, 1.0}});
  const ShellPoint p = shell_point(nodes, centre.front(), material.axes);
  std::vector<PlacedPly> plies;
  plies_at(p, material, parts, plies);
  Eigen::Matrix<double, num_gradients, num_gradients> form =
      Eigen::Matrix<double, num_gradients, num_gradients>::Zero();
  visit_gradient_energy(p, material, parts, plies,
                        [&](double area, const auto& B, const auto& C)
                        {
                          const auto soft = softened(B, C, area);
                          form.noalias() += soft.transpose() * (area * C * soft).eval();
                        });
  return form;
}

/// The form with one column of coefficients, (6, 6), for each pair of slopes or values.
Eigen::Matrix<double, num_fields * num_fields, 9>
by_gradient_pairs(const Eigen::Matrix<double, num_gradients, num_gradients>& form)
{
  Eigen::Matrix<double, num_fields * num_fields, 9> out;
  for (int b = 0; b < 3; ++b)
    for (int a = 0; a < 3; ++a)
    {
      const Eigen::Matrix<double, num_fields, num_fields> block =
          form.block<num_fields, num_fields>(num_fields * a, num_fields * b);
      out.col(3 * b + a) = Eigen::Map<const Eigen::Matrix<double, num_fields * num_fields, 1>>(block.data());
    }
  return out;
}

} // namespace

void enriched_stiffness(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                        const Rotations<num_enriched_functions>& rotations, EnrichedStiffness& out)
{
  static const ReferenceIntegrals reference = make_reference_integrals();
  const Eigen::Matrix<double, num_fields * num_fields, ReferenceIntegrals::num_pairs> on_fields =
      by_gradient_pairs(centre_form(nodes, material, parts)) * reference.integrals;
  for (std::size_t i = 0; i < reference.pairs.size(); ++i)
  {
    const ReferenceIntegrals::Pair& pair = reference.pairs[i];
    const auto group = static_cast<std::size_t>(pair.group);
    EnrichedStiffness::Block& block = pair.to_inside        ? out.inner_edge[group]
                                      : pair.group < inside ? out.edge[group]
                                                            : out.inner;
    const Eigen::Map<const Eigen::Matrix<double, num_fields, num_fields>> K(
        on_fields.col(static_cast<Eigen::Index>(i)).data());
    const Matrix32d of_row =
        rotations.middleCols<2>(2 * (per_group * (pair.to_inside ? inside : pair.group) + pair.row));
    const Matrix32d of_column = rotations.middleCols<2>(2 * (per_group * pair.group + pair.column));
    const int row = 5 * pair.row;
    const int column = 5 * pair.column;
    block.block<3, 3>(row, column) = K.topLeftCorner<3, 3>();
    block.block<3, 2>(row, column + 3) = K.topRightCorner<3, 3>() * of_column;
    block.block<2, 3>(row + 3, column) = of_row.transpose() * K.bottomLeftCorner<3, 3>();
    block.block<2, 2>(row + 3, column + 3) = of_row.transpose() * K.bottomRightCorner<3, 3>() * of_column;
  }
}

} // namespace plate::shell_kinematics
