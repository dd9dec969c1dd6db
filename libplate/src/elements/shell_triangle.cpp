// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/shell_triangle.h>

#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <cmath>
#include <span>
#include <vector>

namespace plate
{

namespace
{

constexpr int num_nodes = ShellTriangle::num_nodes;
constexpr int num_dofs = ShellTriangle::num_dofs;
constexpr int num_strains = ShellTriangle::num_strains;
using StrainRows = Eigen::Matrix<double, num_strains, num_dofs>;
using StrainMatrix = Eigen::Matrix<double, num_strains, num_strains>;
using Matrix32d = Eigen::Matrix<double, 3, 2>;
using NodeRotations = std::array<Matrix32d, num_nodes>;

/// A quadrature point with the shape functions there.
struct ShapePoint
{
  double weight; // [-]
  CubicTriangle::Vector shape;
  CubicTriangle::Gradient gradient;
};

std::vector<ShapePoint> shape_points(std::span<const TrianglePoint> rule)
{
  std::vector<ShapePoint> points;
  for (const TrianglePoint& p : rule)
    points.push_back({p.weight, CubicTriangle::shape(p.xi, p.eta), CubicTriangle::gradient(p.xi, p.eta)});
  return points;
}

/// Quadrature of a triangle, computed once for each rule; a multiple of num_triangle_points.
std::span<const ShapePoint> quadrature_of(const TriangleParts& parts)
{
  static const std::vector<ShapePoint> usual = shape_points(triangle_points());
  static const std::vector<ShapePoint> fine = shape_points(fine_triangle_points());
  return parts.patch_edge ? fine : usual;
}

/// Director change per rotation about t1 and t2: theta x d.
NodeRotations node_rotations(const ShellTriangleNodes& nodes, const MaterialAxes& axes)
{
  NodeRotations rotations;
  for (int i = 0; i < num_nodes; ++i)
  {
    const Eigen::Matrix3d frame = shell_frame(nodes.normal.col(i), axes);
    rotations[static_cast<std::size_t>(i)] << -frame.col(1), frame.col(0); // t1 x d = -t2, t2 x d = t1
  }
  return rotations;
}

/// The surface at one quadrature point.
struct SurfacePoint
{
  CubicTriangle::Vector N;
  Eigen::Matrix<double, num_nodes, 2> dN; // derivatives along e1 and e2 [1/m]
  Eigen::Matrix3d frame;                  // e1, e2, n
  Eigen::Vector3d director;
  Matrix32d director_slope; // derivatives of the director along e1 and e2 [1/m]
  Eigen::Matrix2d b;        // b(a, c) = d,a . e_c: base vectors at distance z are (1 + z b) times those at 0 [1/m]
  double area;              // mid-surface area times weight [m2]
  double thickness;         // [m]
  double station;           // [m]
  Eigen::Vector2d place;    // in the planform [m]
};

SurfacePoint surface_point(const ShellTriangleNodes& nodes, const ShapePoint& at, const MaterialAxes& axes)
{
  SurfacePoint p;
  p.N = at.shape;
  const Matrix32d tangents = nodes.position * at.gradient;
  const Eigen::Vector3d normal = tangents.col(0).cross(tangents.col(1));
  const double jacobian = normal.norm();
  p.frame = shell_frame(normal / jacobian, axes);
  const Eigen::Matrix2d J = tangents.transpose() * p.frame.leftCols<2>();
  p.dN = at.gradient * J.inverse().transpose();
  p.director = nodes.normal * p.N;
  p.director_slope = nodes.normal * p.dN;
  p.b = p.director_slope.transpose() * p.frame.leftCols<2>();
  p.area = at.weight * jacobian;
  p.thickness = nodes.thickness * p.N;
  p.station = nodes.station * p.N;
  p.place = nodes.position.topRows<2>() * p.N;
  return p;
}

/// Rows (11, 22, 12) of sym(v_a . f,b) for a nodal vector f with gradient (g1, g2), v = columns of a 3 x 2 matrix.
Eigen::Matrix3d strain_rows(const Matrix32d& v, double g1, double g2)
{
  Eigen::Matrix3d rows;
  rows.row(0) = g1 * v.col(0).transpose();
  rows.row(1) = g2 * v.col(1).transpose();
  rows.row(2) = g2 * v.col(0).transpose() + g1 * v.col(1).transpose();
  return rows;
}

/// Covariant strains of the point in its orthonormal frame: constant, linear and quadratic in z, then transverse shear.
void covariant_strain_rows(const SurfacePoint& p, const NodeRotations& rotations, StrainRows& B)
{
  const Matrix32d e = p.frame.leftCols<2>();
  for (int i = 0; i < num_nodes; ++i)
  {
    const double g1 = p.dN(i, 0);
    const double g2 = p.dN(i, 1);
    const Matrix32d& rotation = rotations[static_cast<std::size_t>(i)];
    const Eigen::Matrix3d from_tangents = strain_rows(e, g1, g2);
    const Eigen::Matrix3d from_slopes = strain_rows(p.director_slope, g1, g2);
    const int u = 5 * i;
    B.block<3, 3>(0, u) = from_tangents;
    B.block<3, 3>(3, u) = from_slopes;
    B.block<3, 3>(6, u).setZero();
    B.block<1, 3>(9, u) = g1 * p.director.transpose();
    B.block<1, 3>(10, u) = g2 * p.director.transpose();
    B.block<3, 2>(0, u + 3).setZero();
    B.block<3, 2>(3, u + 3).noalias() = from_tangents * rotation;
    B.block<3, 2>(6, u + 3).noalias() = from_slopes * rotation;
    B.block<2, 2>(9, u + 3).noalias() = p.N(i) * e.transpose() * rotation;
  }
}

/// Voigt matrix of E -> b E + E b^T.
Eigen::Matrix3d shift_once(const Eigen::Matrix2d& b)
{
  Eigen::Matrix3d L;
  L << 2.0 * b(0, 0), 0.0, b(0, 1), 0.0, 2.0 * b(1, 1), b(1, 0), 2.0 * b(1, 0), 2.0 * b(0, 1), b(0, 0) + b(1, 1);
  return L;
}

/// Voigt matrix of E -> b E b^T.
Eigen::Matrix3d shift_both(const Eigen::Matrix2d& b)
{
  Eigen::Matrix3d K;
  K << b(0, 0) * b(0, 0), b(0, 1) * b(0, 1), b(0, 0) * b(0, 1), //
      b(1, 0) * b(1, 0), b(1, 1) * b(1, 1), b(1, 0) * b(1, 1), //
      2.0 * b(0, 0) * b(1, 0), 2.0 * b(0, 1) * b(1, 1), b(0, 0) * b(1, 1) + b(0, 1) * b(1, 0);
  return K;
}

/// Physical strains (constant, linear, quadratic in z) from covariant ones: eps(z) = (1 + z b)^-1 E(z) (1 + z b)^-T.
StrainMatrix physical_from_covariant(const Eigen::Matrix2d& b)
{
  StrainMatrix T = StrainMatrix::Identity();
  const Eigen::Matrix3d L = shift_once(b);
  T.block<3, 3>(3, 0) = -L;
  T.block<3, 3>(6, 0) = L * L - shift_both(b);
  T.block<3, 3>(6, 3) = -L;
  return T;
}

/// Volume at distance z over volume at the mid-surface: 1 + linear z + quadratic z^2.
struct VolumeRatio
{
  double linear;    // [1/m]
  double quadratic; // [1/m2]
};

VolumeRatio volume_ratio(const SurfacePoint& p) { return {p.b.trace(), p.b.determinant()}; }

/// Moments of z^k P dz with the volume ratio, kept to z^4.
template <class Moments>
Moments with_volume(const Moments& P, const VolumeRatio& ratio)
{
  Moments out = P;
  for (std::size_t k = 0; k < P.size(); ++k)
  {
    if (k + 1 < P.size())
      out[k] += ratio.linear * P[k + 1];
    if (k + 2 < P.size())
      out[k] += ratio.quadratic * P[k + 2];
  }
  return out;
}

/// Section of the plate on physical strains.
StrainMatrix plate_stiffness(const SectionStiffness& section, const VolumeRatio& ratio)
{
  StrainMatrix C = StrainMatrix::Zero();
  const std::array<Eigen::Matrix3d, 5> P = with_volume(section.P, ratio);
  for (int row = 0; row < 3; ++row)
    for (int col = 0; col < 3; ++col)
      C.block<3, 3>(3 * row, 3 * col) = P[static_cast<std::size_t>(row + col)];
  Eigen::Matrix<double, 2, num_strains> gamma = Eigen::Matrix<double, 2, num_strains>::Zero();
  gamma.block<2, 3>(0, 0) = -section.G0;
  gamma.block<2, 3>(0, 3) = -section.G1;
  gamma.block<2, 2>(0, 9).setIdentity();
  C.noalias() += gamma.transpose() * section.shear * gamma;
  return C;
}

/// Lays the plies of a patch on one side of a stack.
void add_plies(const Laminate& laminate, PlateSide side, std::vector<PlacedPly>& plies)
{
  double bottom = side == PlateSide::outside ? plies.back().top : plies.front().bottom - total_thickness(laminate);
  auto place = side == PlateSide::outside ? plies.end() : plies.begin();
  for (const Ply& ply : laminate.plies)
  {
    const double top = bottom + ply.thickness;
    place = plies.insert(
        place, {.material = &ply.material, .bottom = bottom, .top = top, .angle = ply.angle, .grain = ply.grain});
    ++place;
    bottom = top;
  }
}

/// Plies of the laminate, in the directions they take here, and of the patches over the point.
void plies_at(const SurfacePoint& p, const ShellMaterial& material, const TriangleParts& parts,
              std::vector<PlacedPly>& plies)
{
  place_plies(material.laminate, p.thickness, plies);
  for (const NodalDirections& directions : parts.directions)
  {
    const Eigen::Vector2d twice = directions.double_angle * p.N;
    plies[directions.ply].angle = Angle::radians(0.5 * std::atan2(twice.y(), twice.x()));
  }
  for (const Patch* patch : parts.patches)
    if (contains(patch->region, p.place))
      add_plies(patch->laminate, patch->side, plies);
}

/// A bar at one point of its footprint.
struct BarPoint
{
  BarSection section;
  double c; // direction of the bar in the frame of the point: c e1 + s e2
  double s;
};

BarPoint bar_point(const Bar& bar, const SurfacePoint& p, std::span<const PlacedPly> plies, const MaterialAxes& axes)
{
  const Eigen::Matrix3d along = shell_frame(p.frame.col(2), {.axis = bar.axis, .up = axes.up});
  const BarSeat seat = {.face = plies.front().bottom, .plate_thickness = plies.back().top - plies.front().bottom};
  return {.section = bar_section(bar, seat, bar.profile.at(p.station), along, axes),
          .c = along.col(0).dot(p.frame.col(0)),
          .s = along.col(0).dot(p.frame.col(1))};
}

/// Section of the bar on physical strains of the plate above it (torsion apart).
StrainMatrix bar_stiffness(const BarPoint& bar, const VolumeRatio& ratio)
{
  StrainMatrix C = StrainMatrix::Zero();
  const Eigen::Vector3d along(bar.c * bar.c, bar.s * bar.s, bar.c * bar.s);
  const std::array<double, 5> P = with_volume(bar.section.P, ratio);
  for (int row = 0; row < 3; ++row)
    for (int col = 0; col < 3; ++col)
      C.block<3, 3>(3 * row, 3 * col) = P[static_cast<std::size_t>(row + col)] * along * along.transpose();
  // The shear of the bar sees the strain along it at the middle of its height.
  const double middle = bar.section.P[1] / bar.section.P[0];
  Eigen::Matrix<double, num_strains, 1> gamma = Eigen::Matrix<double, num_strains, 1>::Zero();
  gamma.segment<3>(0) = -bar.section.shear_from_strain * along;
  gamma.segment<3>(3) = -bar.section.shear_from_strain * middle * along;
  gamma(9) = bar.c;
  gamma(10) = bar.s;
  C.noalias() += bar.section.shear * gamma * gamma.transpose();
  return C;
}

/// Rate of twist of the bar: how its cross-section turns about it, free of rigid motion.
Eigen::Matrix<double, 1, num_dofs> twist_row(const SurfacePoint& p, const NodeRotations& rotations, const BarPoint& bar)
{
  const Eigen::Vector2d along(bar.c, bar.s);
  const Eigen::Vector3d across = -bar.s * p.frame.col(0) + bar.c * p.frame.col(1);
  const Eigen::Vector2d curvature = p.b.transpose() * along; // how the director tilts on a step along the bar
  const Eigen::Vector3d normal = p.frame.col(2);
  const double stretch = normal.dot(p.director_slope * along); // zero for exact normals; kept so that rigid motion is free
  Eigen::Matrix<double, 1, num_dofs> row;
  for (int i = 0; i < num_nodes; ++i)
  {
    const Eigen::Vector2d g = p.dN.row(i).transpose();
    const double g_across = bar.c * g(1) - bar.s * g(0);
    row.segment<3>(5 * i) = -g.dot(curvature) * across.transpose() + stretch * g_across * normal.transpose();
    row.segment<2>(5 * i + 3) = g.dot(along) * across.transpose() * rotations[static_cast<std::size_t>(i)];
  }
  return row;
}

/// Calls visit(area, rows, stiffness on the rows) at each quadrature point: the one description of the energy.
template <class Visit>
void for_each_energy_term(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                          Visit visit)
{
  const NodeRotations rotations = node_rotations(nodes, material.axes);
  StrainRows B;
  std::vector<PlacedPly> plies;
  for (const ShapePoint& at : quadrature_of(parts))
  {
    const SurfacePoint p = surface_point(nodes, at, material.axes);
    const VolumeRatio ratio = volume_ratio(p);
    covariant_strain_rows(p, rotations, B);
    plies_at(p, material, parts, plies);
    StrainMatrix C = plate_stiffness(section_stiffness(plies, p.frame, material.axes), ratio);
    if (parts.bar != nullptr)
    {
      const BarPoint point = bar_point(*parts.bar, p, plies, material.axes);
      C += bar_stiffness(point, ratio);
      const Eigen::Matrix<double, 1, 1> torsion(point.section.torsion);
      visit(p.area, twist_row(p, rotations, point), torsion);
    }
    const StrainMatrix T = physical_from_covariant(p.b);
    visit(p.area, B, StrainMatrix(T.transpose() * C * T));
  }
}

} // namespace

Eigen::Matrix<double, 5, 6> rigid_motions_of_node(const Eigen::Vector3d& position, const Eigen::Vector3d& normal,
                                                  const MaterialAxes& axes)
{
  Eigen::Matrix<double, 5, 6> R = Eigen::Matrix<double, 5, 6>::Zero();
  R.topLeftCorner<3, 3>().setIdentity();
  const Eigen::Matrix3d frame = shell_frame(normal, axes);
  for (int k = 0; k < 3; ++k)
  {
    const Eigen::Vector3d turn = Eigen::Vector3d::Unit(k);
    R.block<3, 1>(0, 3 + k) = turn.cross(position);
    R.block<2, 1>(3, 3 + k) = frame.leftCols<2>().transpose() * turn;
  }
  return R;
}

ShellTriangle::RigidMotions ShellTriangle::rigid_motions(const ShellTriangleNodes& nodes, const MaterialAxes& axes)
{
  RigidMotions R;
  for (int i = 0; i < num_nodes; ++i)
    R.block<5, 6>(5 * i, 0) = rigid_motions_of_node(nodes.position.col(i), nodes.normal.col(i), axes);
  return R;
}

void ShellTriangle::stiffness(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                              Matrix& K)
{
  // Strain rows of twelve points first, then one product: its blocks stay in cache, and only half of it is computed.
  constexpr int max_rows = num_triangle_points * (num_strains + 1);
  Eigen::Matrix<double, max_rows, num_dofs> rows;
  Eigen::Matrix<double, max_rows, num_dofs> stresses;
  Eigen::Index n = 0;
  K.setZero();
  const auto add_product = [&]
  {
    K.triangularView<Eigen::Lower>() += rows.topRows(n).transpose() * stresses.topRows(n);
    n = 0;
  };
  for_each_energy_term(nodes, material, parts,
                       [&](double area, const auto& B, const auto& C)
                       {
                         if (n + B.rows() > max_rows)
                           add_product();
                         rows.middleRows(n, B.rows()) = B;
                         stresses.middleRows(n, B.rows()) = (area * C).lazyProduct(B);
                         n += B.rows();
                       });
  add_product();
  K.triangularView<Eigen::StrictlyUpper>() = K.transpose();
}

void ShellTriangle::add_strain_energies(const ShellTriangleNodes& nodes, const ShellMaterial& material,
                                        const TriangleParts& parts, const Displacements& u,
                                        Eigen::Ref<Eigen::VectorXd> energies)
{
  for_each_energy_term(nodes, material, parts,
                       [&](double area, const auto& B, const auto& C)
                       {
                         const Eigen::MatrixXd strain = B * u;
                         energies += 0.5 * area * strain.cwiseProduct(C * strain).colwise().sum().transpose();
                       });
}

void ShellTriangle::mass(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                         Matrix& M)
{
  M.setZero();
  const NodeRotations rotations = node_rotations(nodes, material.axes);
  std::vector<PlacedPly> plies;
  for (const ShapePoint& at : quadrature_of(parts))
  {
    const SurfacePoint p = surface_point(nodes, at, material.axes);
    plies_at(p, material, parts, plies);
    SectionMass moments = section_mass(plies);
    if (parts.bar != nullptr)
    {
      const BarPoint point = bar_point(*parts.bar, p, plies, material.axes);
      for (std::size_t k = 0; k < moments.size(); ++k)
        moments[k] += point.section.mass[k];
    }
    const SectionMass m = with_volume(moments, volume_ratio(p));
    for (int j = 0; j < num_nodes; ++j)
    {
      const Matrix32d& rotation_j = rotations[static_cast<std::size_t>(j)];
      for (int i = 0; i < num_nodes; ++i)
      {
        const Matrix32d& rotation_i = rotations[static_cast<std::size_t>(i)];
        const double N = p.area * p.N(i) * p.N(j);
        M.block<3, 3>(5 * i, 5 * j).diagonal().array() += N * m[0];
        M.block<3, 2>(5 * i, 5 * j + 3) += N * m[1] * rotation_j;
        M.block<2, 3>(5 * i + 3, 5 * j) += N * m[1] * rotation_i.transpose();
        M.block<2, 2>(5 * i + 3, 5 * j + 3) += N * m[2] * rotation_i.transpose() * rotation_j;
      }
    }
  }
}

} // namespace plate
