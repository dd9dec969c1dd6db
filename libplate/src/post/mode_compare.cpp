// SPDX-License-Identifier: MPL-2.0
#include <plate/post/mode_compare.h>

#include "mesh/triangle_nodes.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>
#include <plate/mesh/locate.h>

#include <Eigen/Geometry>

#include <cmath>
#include <limits>
#include <optional>
#include <utility>

namespace plate
{

namespace
{

constexpr double most_left_out = 0.5; // of the mass: what remains says little about the whole shapes

Eigen::AlignedBox2d planform_box(const ShellMesh& mesh)
{
  Eigen::AlignedBox2d box;
  for (const Eigen::Vector3d& node : mesh.nodes)
    box.extend(Eigen::Vector2d(node.head<2>()));
  return box;
}

/// Where the points of one plate lie in another one.
class Counterparts
{
public:
  Counterparts(const ShellMesh& from, const ShellMesh& to)
      : from_(from), same_mesh_(from.triangles == to.triangles), from_box_(planform_box(from)),
        to_box_(planform_box(to)), locator_(to)
  {
  }

  [[nodiscard]] std::optional<MeshPoint> of(const MeshPoint& point) const
  {
    if (same_mesh_)
      return point;
    const Eigen::Vector3d place = nodes_of(from_, point.triangle) * CubicTriangle::shape(point.xi, point.eta);
    const Eigen::Array2d share = (place.head<2>() - from_box_.center()).array() / from_box_.sizes().array();
    return locator_.locate(to_box_.center() + (share * to_box_.sizes().array()).matrix());
  }

private:
  const ShellMesh& from_;
  bool same_mesh_;
  Eigen::AlignedBox2d from_box_;
  Eigen::AlignedBox2d to_box_;
  PointLocator locator_;
};

/// In the order of the weights.
MeshPoint quadrature_point(Eigen::Index k)
{
  const auto index = static_cast<std::size_t>(k);
  const TrianglePoint& p = triangle_points()[index % num_triangle_points];
  return {.triangle = index / num_triangle_points, .xi = p.xi, .eta = p.eta};
}

/// Displacements of all modes at a point, times the root of its weight.
void sample(const ModeShapes& shapes, const MeshPoint& at, double root, Eigen::Ref<Eigen::MatrixXd> rows)
{
  const CubicTriangle::Vector N = CubicTriangle::shape(at.xi, at.eta);
  rows.setZero();
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    rows += root * N(i) *
            shapes.displacement.middleRows<3>(3 * shapes.mesh.triangles[at.triangle][static_cast<std::size_t>(i)]);
}

/// Area each point of each triangle stands for, times a quantity there.
///
/// @param quantity  called with triangle, shape functions of a point
template <class Quantity>
Eigen::VectorXd integration_weights(const ShellMesh& mesh, const Quantity& quantity)
{
  Eigen::VectorXd weights(static_cast<Eigen::Index>(mesh.triangles.size() * num_triangle_points));
  Eigen::Index k = 0;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const Eigen::Matrix<double, 3, CubicTriangle::num_nodes> X = nodes_of(mesh, t);
    for (const TrianglePoint& p : triangle_points())
    {
      const Eigen::Matrix<double, 3, 2> tangents = X * CubicTriangle::gradient(p.xi, p.eta);
      weights(k++) =
          p.weight * tangents.col(0).cross(tangents.col(1)).norm() * quantity(t, CubicTriangle::shape(p.xi, p.eta));
    }
  }
  return weights;
}

double at_point(const ShellMesh& mesh, const std::vector<double>& nodal, std::size_t triangle,
                const CubicTriangle::Vector& N)
{
  double sum = 0.0;
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    sum += N(i) * nodal[static_cast<std::size_t>(mesh.triangles[triangle][static_cast<std::size_t>(i)])];
  return sum;
}

/// Volume each point of each triangle stands for.
Eigen::VectorXd volume_weights(const ShellMesh& mesh)
{
  return integration_weights(mesh, [&](std::size_t triangle, const CubicTriangle::Vector& N)
                             { return at_point(mesh, mesh.thickness, triangle, N); });
}

ModeShapes weighted_shapes(const ShellMesh& mesh, const DofMap& dofs, const Eigen::MatrixXd& unknowns,
                           Eigen::VectorXd weight)
{
  ModeShapes shapes = {.mesh = mesh, .weight = std::move(weight), .displacement = {}};
  shapes.displacement.resize(3 * static_cast<Eigen::Index>(mesh.nodes.size()), unknowns.cols());
  for (Eigen::Index mode = 0; mode < unknowns.cols(); ++mode)
    shapes.displacement.col(mode) = nodal_displacements(dofs, unknowns.col(mode)).reshaped();
  return shapes;
}

/// Mass per area of laminate, patches and bar [kg/m2].
double areal_mass_at(const Model& model, const TriangleCover& cover, std::size_t triangle,
                     const CubicTriangle::Vector& N)
{
  const ShellMesh& mesh = model.mesh;
  double mass = section_mass(model.material.laminate, at_point(mesh, mesh.thickness, triangle, N))[0];
  const Eigen::Vector3d place = nodes_of(mesh, triangle) * N;
  for (const int patch : cover.patches)
    if (const Patch& p = model.patches[static_cast<std::size_t>(patch)]; contains(p.region, place.head<2>()))
      mass += areal_mass(p.laminate);
  if (cover.bar >= 0)
  {
    const auto index = static_cast<std::size_t>(cover.bar);
    const Bar& bar = model.bars[index];
    mass += bar.material.density * bar.profile.at(at_point(mesh, mesh.bars[index].station, triangle, N));
  }
  return mass;
}

} // namespace

ModeShapes mode_shapes(const ShellMesh& mesh, const DofMap& dofs, const Eigen::MatrixXd& unknowns)
{
  return weighted_shapes(mesh, dofs, unknowns, volume_weights(mesh));
}

ModeShapes mode_shapes(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& unknowns)
{
  const std::vector<TriangleCover> covers = triangle_covers(model);
  return weighted_shapes(model.mesh, dofs, unknowns,
                         integration_weights(model.mesh, [&](std::size_t triangle, const CubicTriangle::Vector& N)
                                             { return areal_mass_at(model, covers[triangle], triangle, N); }));
}

ModeShapes scalar_shapes(const ShellMesh& mesh, const Eigen::MatrixXd& values)
{
  const auto num_nodes = static_cast<Eigen::Index>(mesh.nodes.size());
  if (values.rows() != num_nodes)
    throw InvalidInput(message("scalar_shapes: there must be a value for each of ", num_nodes, " nodes; got ",
                               values.rows(), " rows"));
  ModeShapes shapes = {.mesh = mesh,
                       .weight = volume_weights(mesh),
                       .displacement = Eigen::MatrixXd::Zero(3 * num_nodes, values.cols())};
  for (Eigen::Index node = 0; node < num_nodes; ++node)
    shapes.displacement.row(3 * node + 2) = values.row(node);
  return shapes;
}

Eigen::MatrixXd shape_products(const ModeShapes& shapes)
{
  Eigen::MatrixXd rows(3 * shapes.weight.size(), shapes.displacement.cols());
  for (Eigen::Index k = 0; k < shapes.weight.size(); ++k)
    sample(shapes, quadrature_point(k), std::sqrt(shapes.weight(k)), rows.middleRows<3>(3 * k));
  return rows.transpose() * rows;
}

ShapeProducts shape_products(const ModeShapes& reference, const ModeShapes& other)
{
  const Counterparts counterparts(reference.mesh, other.mesh);
  const Eigen::Index num_points = reference.weight.size();
  Eigen::MatrixXd a = Eigen::MatrixXd::Zero(3 * num_points, reference.displacement.cols());
  Eigen::MatrixXd b = Eigen::MatrixXd::Zero(3 * num_points, other.displacement.cols());
  double left_out = 0.0;
  for (Eigen::Index k = 0; k < num_points; ++k)
  {
    const MeshPoint point = quadrature_point(k);
    const std::optional<MeshPoint> there = counterparts.of(point);
    if (!there)
    {
      left_out += reference.weight(k);
      continue;
    }
    const double root = std::sqrt(reference.weight(k));
    sample(reference, point, root, a.middleRows<3>(3 * k));
    sample(other, *there, root, b.middleRows<3>(3 * k));
  }
  const double share = left_out / reference.weight.sum();
  if (share > most_left_out)
    throw InvalidInput(message("the two plates share no more than ", 100.0 * (1.0 - share),
                               " % of the reference, stretched to one length and width; shapes can be compared only "
                               "between outlines of the same form"));
  return {
      .reference = a.transpose() * a, .cross = a.transpose() * b, .other = b.transpose() * b, .share_left_out = share};
}

Eigen::MatrixXd modal_assurance(const ShapeProducts& products)
{
  const Eigen::MatrixXd norms = products.reference.diagonal() * products.other.diagonal().transpose();
  return (norms.array() > 0.0).select(products.cross.array().square() / norms.array(), 0.0);
}

Eigen::MatrixXd modal_assurance(const ModeShapes& a, const ModeShapes& b)
{
  return modal_assurance(shape_products(a, b));
}

std::vector<int> best_assignment(const Eigen::MatrixXd& score)
{
  const auto rows = static_cast<int>(score.rows());
  const auto columns = static_cast<int>(score.cols());
  if (rows > columns)
    throw InvalidInput(message("best_assignment: ", rows, " rows cannot each have one of ", columns, " columns"));

  // Column 0 is a dummy that holds the row being placed; potentials u, v keep reduced costs non-negative.
  const auto size = static_cast<std::size_t>(columns) + 1;
  std::vector<double> u(static_cast<std::size_t>(rows) + 1, 0.0);
  std::vector<double> v(size, 0.0);
  std::vector<std::size_t> row_of(size, 0);
  for (std::size_t row = 1; row <= static_cast<std::size_t>(rows); ++row)
  {
    std::vector<double> least(size, std::numeric_limits<double>::infinity());
    std::vector<std::size_t> from(size, 0);
    std::vector<bool> done(size, false);
    std::size_t column = 0;
    row_of[0] = row;
    do
    {
      done[column] = true;
      const std::size_t current = row_of[column];
      std::size_t next = 0;
      double step = std::numeric_limits<double>::infinity();
      for (std::size_t c = 1; c < size; ++c)
      {
        if (done[c])
          continue;
        const double cost = -score(static_cast<Eigen::Index>(current) - 1, static_cast<Eigen::Index>(c) - 1);
        if (const double reduced = cost - u[current] - v[c]; reduced < least[c])
        {
          least[c] = reduced;
          from[c] = column;
        }
        if (least[c] < step)
        {
          step = least[c];
          next = c;
        }
      }
      for (std::size_t c = 0; c < size; ++c)
      {
        if (done[c])
        {
          u[row_of[c]] += step;
          v[c] -= step;
        }
        else
          least[c] -= step;
      }
      column = next;
    } while (row_of[column] != 0);
    while (column != 0)
    {
      row_of[column] = row_of[from[column]];
      column = from[column];
    }
  }

  std::vector<int> assignment(static_cast<std::size_t>(rows), -1);
  for (std::size_t c = 1; c < size; ++c)
    if (row_of[c] != 0)
      assignment[row_of[c] - 1] = static_cast<int>(c) - 1;
  return assignment;
}

} // namespace plate
