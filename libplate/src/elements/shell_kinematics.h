// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/cubic_triangle.h>
#include <plate/elements/shell_triangle.h>

#include <array>
#include <span>

/// Geometry and strains of the shell triangle at its quadrature points.
namespace plate::shell_kinematics
{

inline constexpr int num_nodes = ShellTriangle::num_nodes;
inline constexpr int num_dofs = ShellTriangle::num_dofs;
inline constexpr int num_strains = ShellTriangle::num_strains;
using StrainRows = Eigen::Matrix<double, num_strains, num_dofs>;
using StrainMatrix = Eigen::Matrix<double, num_strains, num_strains>;
using Matrix32d = Eigen::Matrix<double, 3, 2>;
using NodeRotations = std::array<Matrix32d, num_nodes>;

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

/// Director change per rotation about t1 and t2: theta x d.
[[nodiscard]] NodeRotations node_rotations(const ShellTriangleNodes& nodes, const MaterialAxes& axes);

/// The surface at one quadrature point.
struct ShellPoint
{
  CubicTriangle::Vector N;
  Eigen::Matrix<double, num_nodes, 2> dN; ///< derivatives along e1 and e2 [1/m]
  Eigen::Matrix3d frame;                  ///< e1, e2, n
  Eigen::Vector3d director;
  Matrix32d director_slope; ///< derivatives of the director along e1 and e2 [1/m]
  Eigen::Matrix2d b;        ///< b(a, c) = d,a . e_c: base vectors at distance z are (1 + z b) times those at 0 [1/m]
  double area;              ///< mid-surface area times weight [m2]
  double thickness;         ///< [m]
  double station;           ///< [m]
  Eigen::Vector2d place;    ///< in the planform [m]
};

[[nodiscard]] ShellPoint shell_point(const ShellTriangleNodes& nodes, const ShapePoint& at, const MaterialAxes& axes);

/// Covariant strains of the point in its orthonormal frame: constant, linear and quadratic in z, then transverse shear.
void covariant_strain_rows(const ShellPoint& p, const NodeRotations& rotations, StrainRows& B);

/// Physical strains (constant, linear, quadratic in z) from covariant ones: eps(z) = (1 + z b)^-1 E(z) (1 + z b)^-T.
[[nodiscard]] StrainMatrix physical_from_covariant(const Eigen::Matrix2d& b);

} // namespace plate::shell_kinematics
