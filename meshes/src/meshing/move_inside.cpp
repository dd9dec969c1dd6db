// SPDX-License-Identifier: MPL-2.0
#include "move_inside.h"

#include <plate/core/error.h>

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

namespace plate
{

namespace
{

using Eigen::Vector2d;
using Coupling = Eigen::Matrix3d;

// Stiffness of a linear triangle for a harmonic field, over its area.
Coupling coupling(const Vector2d& a, const Vector2d& b, const Vector2d& c)
{
  Eigen::Matrix<double, 2, 3> opposite; // edges across from each corner
  opposite << c - b, a - c, b - a;
  const Vector2d u = b - a, v = c - a;
  const double twice_area = u.x() * v.y() - u.y() * v.x();
  return opposite.transpose() * opposite / (twice_area * twice_area);
}

} // namespace

void move_inside(const PlanformMesh& old, CornerMesh& moved)
{
  const auto num_given = static_cast<int>(moved.nodes.size());
  const int num_free = old.num_corners - num_given;
  std::vector<Eigen::Triplet<double>> entries;
  Eigen::MatrixX2d load = Eigen::MatrixX2d::Zero(num_free, 2);
  for (const auto& triangle : old.triangles)
  {
    const auto at = [&](std::size_t i) -> const Vector2d& { return old.nodes[static_cast<std::size_t>(triangle[i])]; };
    const Coupling k = coupling(at(0), at(1), at(2));
    for (int i = 0; i < 3; ++i)
    {
      const int row = triangle[static_cast<std::size_t>(i)] - num_given;
      if (row < 0)
        continue;
      for (int j = 0; j < 3; ++j)
      {
        const auto other = static_cast<std::size_t>(triangle[static_cast<std::size_t>(j)]);
        const int column = static_cast<int>(other) - num_given;
        if (column >= 0)
          entries.emplace_back(row, column, k(i, j));
        else
          load.row(row) -= k(i, j) * (moved.nodes[other] - old.nodes[other]).transpose();
      }
    }
  }
  Eigen::MatrixX2d displacement = Eigen::MatrixX2d::Zero(num_free, 2);
  if (!load.isZero(0.0))
  {
    Eigen::SparseMatrix<double> K(num_free, num_free);
    K.setFromTriplets(entries.begin(), entries.end());
    const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor(K);
    if (factor.info() != Eigen::Success)
      throw NumericalFailure("move_planform: the inside of the mesh is not held by its boundary; mesh anew");
    displacement = factor.solve(load);
  }
  for (int i = 0; i < num_free; ++i)
    moved.nodes.push_back(old.nodes[static_cast<std::size_t>(num_given + i)] + displacement.row(i).transpose());
  moved.triangles.clear();
  for (const auto& triangle : old.triangles)
    moved.triangles.push_back({triangle[0], triangle[1], triangle[2]});
}

} // namespace plate
