// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>
#include <plate/elements/shell_triangle.h>

#include <span>
#include <vector>

/// Geometry and strains of the shell triangle at its quadrature points.
namespace plate::shell_kinematics
{

inline constexpr int num_nodes = ShellTriangle::num_nodes;
inline constexpr int num_dofs = ShellTriangle::num_dofs;
inline constexpr int num_strains = ShellTriangle::num_strains;
using StrainMatrix = Eigen::Matrix<double, num_strains, num_strains>;
using Matrix32d = Eigen::Matrix<double, 3, 2>;

/// Director change per rotation about the two tangents, two columns for each of n functions.
template <int n>
using Rotations = Eigen::Matrix<double, 3, 2 * n>;

/// The n functions that carry displacement and rotation, at one point; each has five unknowns.
template <int n>
struct FieldPoint
{
  Eigen::Matrix<double, n, 1> N;
  Eigen::Matrix<double, n, 2> dN; ///< derivatives along e1 and e2 [1/m]
};

/// What strains depend on at a point: derivatives along e1 and e2 of the displacement u, those of the change r of the
/// director, and r itself, as u,1 u,2 r,1 r,2 r; then a zero that fills the vectors of the kernel.
inline constexpr int num_frame_gradients = 16;
template <int num_rows>
using FrameGradientRows = Eigen::Matrix<double, num_rows, num_frame_gradients, Eigen::RowMajor>;

/// Gradients of the field from its unknowns.
template <int n>
[[nodiscard]] Eigen::Matrix<double, num_frame_gradients, 5 * n> frame_gradients(const FieldPoint<n>& field,
                                                                                const Rotations<n>& rotations)
{
  Eigen::Matrix<double, num_frame_gradients, 5 * n> G = Eigen::Matrix<double, num_frame_gradients, 5 * n>::Zero();
  for (int i = 0; i < n; ++i)
  {
    for (int k = 0; k < 2; ++k)
    {
      G.template block<3, 3>(3 * k, 5 * i).diagonal().setConstant(field.dN(i, k));
      G.template block<3, 2>(6 + 3 * k, 5 * i + 3) = field.dN(i, k) * rotations.template middleCols<2>(2 * i);
    }
    G.template block<3, 2>(12, 5 * i + 3) = field.N(i) * rotations.template middleCols<2>(2 * i);
  }
  return G;
}

/// A quadrature point with the shape functions there.
struct ShapePoint
{
  double weight; ///< [-]
  CubicTriangle::Vector shape;
  CubicTriangle::Gradient gradient;
};

/// Quadrature of a triangle, computed once for each rule; a multiple of num_triangle_points.
///
/// @param fine  for integrands that jump within the triangle
[[nodiscard]] std::span<const ShapePoint> quadrature(bool fine);

/// Shape functions at the points of a rule.
[[nodiscard]] std::vector<ShapePoint> shape_points(std::span<const TrianglePoint> rule);

/// Director change per rotation about the tangents t1 and t2 of a unit director d: theta x d.
[[nodiscard]] Matrix32d director_rotation(const Eigen::Vector3d& director, const MaterialAxes& axes);
[[nodiscard]] Rotations<num_nodes> node_rotations(const ShellTriangleNodes& nodes, const MaterialAxes& axes);

/// The surface at one quadrature point.
struct ShellPoint
{
  CubicTriangle::Vector N;
  Eigen::Matrix<double, num_nodes, 2> dN; ///< derivatives along e1 and e2 [1/m]
  Eigen::Matrix3d frame;                  ///< e1, e2, n
  Eigen::Vector3d director;
  Matrix32d director_slope; ///< derivatives of the director along e1 and e2 [1/m]
  Eigen::Matrix2d to_frame; ///< gradients along (xi, eta) times this are derivatives along e1 and e2 [1/m]
  Eigen::Matrix2d b;        ///< b(a, c) = d,a . e_c: base vectors at distance z are (1 + z b) times those at 0 [1/m]
  double area;              ///< mid-surface area times weight [m2]
  double thickness;         ///< [m]
  double station;           ///< [m]
  Eigen::Vector2d place;    ///< in the planform [m]
};

[[nodiscard]] ShellPoint shell_point(const ShellTriangleNodes& nodes, const ShapePoint& at, const MaterialAxes& axes);

/// The shape functions themselves as displacement functions.
[[nodiscard]] inline FieldPoint<num_nodes> cubic_field(const ShellPoint& p)
{
  return {.N = p.N, .dN = p.dN};
}

} // namespace plate::shell_kinematics
