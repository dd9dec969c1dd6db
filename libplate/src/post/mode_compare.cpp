// SPDX-License-Identifier: MPL-2.0
#include <plate/post/mode_compare.h>

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>

#include <Eigen/Geometry>

#include <limits>

namespace plate
{

namespace
{

/// Planform coordinates over the extent of the plate, so that a plate and its scaled copy coincide.
Eigen::Matrix2Xd scaled_planform(const std::vector<Eigen::Vector3d>& points)
{
  Eigen::AlignedBox2d box;
  for (const Eigen::Vector3d& p : points)
    box.extend(p.head<2>());
  Eigen::Matrix2Xd scaled(2, static_cast<Eigen::Index>(points.size()));
  for (std::size_t i = 0; i < points.size(); ++i)
    scaled.col(static_cast<Eigen::Index>(i)) =
        (points[i].head<2>() - box.center()).cwiseQuotient(box.sizes());
  return scaled;
}

/// Shapes of a at the nodes of b.
Eigen::MatrixXd displacement_at_nodes_of(const ModeShapes& a, const ModeShapes& b)
{
  if (a.points.size() == b.points.size())
    return a.displacement;
  const Eigen::Matrix2Xd from = scaled_planform(a.points);
  const Eigen::Matrix2Xd to = scaled_planform(b.points);
  Eigen::MatrixXd sampled(b.displacement.rows(), a.displacement.cols());
  for (Eigen::Index i = 0; i < to.cols(); ++i)
  {
    Eigen::Index nearest = 0;
    (from.colwise() - to.col(i)).colwise().squaredNorm().minCoeff(&nearest);
    sampled.middleRows<3>(3 * i) = a.displacement.middleRows<3>(3 * nearest);
  }
  return sampled;
}

} // namespace

ModeShapes mode_shapes(const ShellMesh& mesh, const DofMap& dofs, const Eigen::MatrixXd& unknowns)
{
  ModeShapes shapes = {.points = mesh.nodes, .weight = nodal_areas(mesh), .displacement = {}};
  for (Eigen::Index i = 0; i < shapes.weight.size(); ++i)
    shapes.weight(i) *= mesh.thickness[static_cast<std::size_t>(i)];
  shapes.displacement.resize(3 * shapes.weight.size(), unknowns.cols());
  for (Eigen::Index mode = 0; mode < unknowns.cols(); ++mode)
    shapes.displacement.col(mode) = nodal_displacements(dofs, unknowns.col(mode)).reshaped();
  return shapes;
}

Eigen::MatrixXd modal_assurance(const ModeShapes& a, const ModeShapes& b)
{
  const Eigen::VectorXd weight = b.weight.transpose().replicate<3, 1>().reshaped();
  const Eigen::MatrixXd at_b = displacement_at_nodes_of(a, b);
  const Eigen::MatrixXd weighted = weight.asDiagonal() * at_b;
  const Eigen::VectorXd aa = at_b.cwiseProduct(weighted).colwise().sum();
  const Eigen::VectorXd bb = (weight.asDiagonal() * b.displacement.cwiseAbs2()).colwise().sum();
  return (weighted.transpose() * b.displacement).cwiseAbs2().cwiseQuotient(aa * bb.transpose());
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
