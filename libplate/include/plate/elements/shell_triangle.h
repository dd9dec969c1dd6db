// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/bar.h>
#include <plate/laminates/section.h>
#include <plate/mesh/planform_region.h>

#include <Eigen/Core>

#include <array>
#include <vector>

namespace plate
{

/// Geometry of one cubic shell triangle: columns are nodes.
struct ShellTriangleNodes
{
  Eigen::Matrix<double, 3, 10> position;  ///< on the mid-surface [m]
  Eigen::Matrix<double, 3, 10> normal;    ///< unit directors, outward [-]
  Eigen::Matrix<double, 1, 10> thickness; ///< [m]
  /// ShellMesh::thickness_bubbles, which ShellTriangle leaves out [m].
  Eigen::Matrix<double, 1, 5> thickness_bubbles = Eigen::Matrix<double, 1, 5>::Zero();
  Eigen::Matrix<double, 1, 10> station = Eigen::Matrix<double, 1, 10>::Zero(); ///< along the bar, only with a bar [m]
};

/// Laminate of the plate and the directions its angles refer to.
struct ShellMaterial
{
  Laminate laminate;
  MaterialAxes axes = {};
};

/// A face of a plate.
enum class PlateSide
{
  inside, ///< air side, z < 0
  outside ///< mould side
};

/// Further plies over a part of the plate. They change the section on one side: the reference surface stays where it
/// is.
struct Patch
{
  PlateSide side = PlateSide::inside;
  PlanformRegion region;
  Laminate laminate; ///< from inside to outside
};

/// Directions that one ply of the laminate takes instead of its angle, at the nodes of a triangle.
struct NodalDirections
{
  std::size_t ply; ///< index into the laminate
  /// cos and sin of twice the angle, which know no difference between a direction and its opposite [-].
  Eigen::Matrix<double, 2, 10> double_angle = Eigen::Matrix<double, 2, 10>::Zero();
};

/// What one triangle carries besides the laminate that all share.
struct TriangleParts
{
  const Bar* bar = nullptr;                ///< glued under it
  const BarTorsion* bar_torsion = nullptr; ///< of that bar; none: it does not resist twist
  std::vector<const Patch*> patches = {};  ///< over it or a part of it, from the laminate outward on either side
  bool patch_edge = false;                 ///< some patch ends within the triangle: integrated on sub-triangles
  std::vector<NodalDirections> directions = {};
};

/// Curved shell triangle with ten nodes and five unknowns per node, fully integrated.
///
/// Unknowns of a node: displacement (x, y, z), then the rotations about t1 and t2, the first two columns of
/// shell_frame() at its director d; the director moves by theta x d. Position and director are interpolated by the
/// same functions, so rigid motions carry no energy exactly. In-plane strain is taken to second order in the distance
/// from the mid-surface, with the curvature of the surface at each distance (base vectors, volume): at an arch of
/// 15 mm that is worth 0.1 % of a frequency.
/// @source degenerated shell, first-order shear: [Chapelle2011] ch. 4; metric through the thickness: DEVELOPERS.md
struct ShellTriangle
{
  static constexpr int num_nodes = 10;
  static constexpr int num_dofs = 50;
  static constexpr int num_strains = 11; ///< membrane (3), linear (3) and quadratic (3) in z, transverse shear (2)
  using Matrix = Eigen::Matrix<double, num_dofs, num_dofs>;
  using Displacements = Eigen::Matrix<double, num_dofs, Eigen::Dynamic>;

  /// Integrals over pairs of nodes of their shape functions with the moments of order 0, 1, 2 of the mass about the
  /// mid-surface: displacement with displacement, with change of director, change of director with itself
  /// [kg, kg m, kg m2].
  using MassMoments = std::array<Eigen::Matrix<double, num_nodes, num_nodes>, 3>;

  /// Stiffness, and the mass in its shortest form: both in the time of one.
  static void matrices(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                       Matrix& K, MassMoments& mass);

  /// The mass from its moments, symmetric.
  static void expand_mass(const MassMoments& mass, const ShellTriangleNodes& nodes, const MaterialAxes& axes,
                          Matrix& M);

  /// Stiffness [N/m, N, N m], symmetric.
  static void stiffness(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                        Matrix& K);

  /// Consistent mass with rotary inertia [kg, kg m, kg m2], symmetric.
  static void mass(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                   Matrix& M);

  /// Displacements of the nodes in the six rigid motions: shifts along, then turns about x, y, z through the origin.
  using RigidMotions = Eigen::Matrix<double, num_dofs, 6>;
  [[nodiscard]] static RigidMotions rigid_motions(const ShellTriangleNodes& nodes, const MaterialAxes& axes);

  /// What the bar under the triangle would add to the torsional stiffness there at a height of its own [N m2].
  ///
  /// @param node    place in the triangle: one of its nodes
  /// @param height  of the bar [m]
  [[nodiscard]] static double bar_torsion(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                                          const TriangleParts& parts, int node, double height);

  /// Strain energies of displacement fields (columns), u^T K u / 2 for each [J].
  static void add_strain_energies(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                                  const TriangleParts& parts, const Displacements& u,
                                  Eigen::Ref<Eigen::VectorXd> energies);
};

/// Unknowns of one node in the six rigid motions, rows as the unknowns of ShellTriangle.
[[nodiscard]] Eigen::Matrix<double, 5, 6>
rigid_motions_of_node(const Eigen::Vector3d& position, const Eigen::Vector3d& normal, const MaterialAxes& axes);

} // namespace plate
