// SPDX-License-Identifier: MPL-2.0
#include <plate/air/hole_flow.h>

#include "hole_cells.h"

#include <plate/core/error.h>

#include <Eigen/Cholesky>
#include <Eigen/LU>

#include <numbers>
#include <utility>

namespace plate
{
namespace
{

/// Cells of all holes, one hole after the other.
struct Cells
{
  std::vector<HoleCell> cells;
  std::vector<Eigen::Index> first; ///< of each hole, and one past the last
};

Cells all_cells(const std::vector<HoleOutline>& holes, int cells_across)
{
  Cells all = {.cells = {}, .first = {0}};
  for (const HoleOutline& hole : holes)
  {
    for (HoleCell& cell : cells_of(hole, cells_across))
      all.cells.push_back(std::move(cell));
    all.first.push_back(static_cast<Eigen::Index>(all.cells.size()));
  }
  return all;
}

/// Potential of one cell's flow at another, mean over its own: 1 / (2 pi r) beside a rigid wall.
Eigen::MatrixXd potentials(const std::vector<HoleCell>& cells)
{
  const auto n = static_cast<Eigen::Index>(cells.size());
  Eigen::MatrixXd P(n, n);
  for (Eigen::Index j = 0; j < n; ++j)
    for (Eigen::Index i = j; i < n; ++i)
      P(i, j) = inverse_distance(cells[static_cast<std::size_t>(i)], cells[static_cast<std::size_t>(j)]) /
                (2.0 * std::numbers::pi);
  return P;
}

/// The flow of a hole for a pressure on it alone, spread over its cells.
HoleSpread spread_of(const Cells& all, std::size_t hole, const Eigen::VectorXd& flow)
{
  HoleSpread spread = {.points = {}, .shares = {}, .area = 0.0};
  const Eigen::Index count = all.first[hole + 1] - all.first[hole];
  spread.shares = flow.segment(all.first[hole], count);
  spread.shares /= spread.shares.sum();
  for (Eigen::Index i = all.first[hole]; i < all.first[hole + 1]; ++i)
  {
    spread.points.push_back(all.cells[static_cast<std::size_t>(i)].centre);
    spread.area += all.cells[static_cast<std::size_t>(i)].area;
  }
  return spread;
}

} // namespace

Eigen::MatrixXd HoleFlow::inertance() const
{
  Eigen::MatrixXd sum = 2.0 * one_side;
  sum.diagonal() += neck;
  return sum;
}

HoleFlow hole_flow(const std::vector<HoleOutline>& holes, const HoleFlowOptions& options)
{
  if (holes.empty() || options.cells_across < 2)
    throw InvalidInput(message("hole_flow: there must be a hole and at least 2 cells across it; got ", holes.size(),
                               " holes and ", options.cells_across, " cells"));
  const Cells all = all_cells(holes, options.cells_across);
  const auto num_holes = static_cast<Eigen::Index>(holes.size());
  Eigen::MatrixXd on_hole = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(all.cells.size()), num_holes);
  for (Eigen::Index h = 0; h < num_holes; ++h)
    for (Eigen::Index i = all.first[static_cast<std::size_t>(h)]; i < all.first[static_cast<std::size_t>(h) + 1]; ++i)
      on_hole(i, h) = 1.0;
  const Eigen::LLT<Eigen::MatrixXd> factor(potentials(all.cells));
  if (factor.info() != Eigen::Success)
    throw NumericalFailure(message("hole_flow: the matrix of ", all.cells.size(),
                                   " cells is not positive definite; do outlines cross themselves or each other?"));
  const Eigen::MatrixXd flow = factor.solve(on_hole); // columns: for a pressure of 1 on one hole
  HoleFlow result;
  result.one_side = (on_hole.transpose() * flow).inverse();
  result.one_side = 0.5 * (result.one_side + result.one_side.transpose()).eval();
  result.neck.resize(num_holes);
  for (Eigen::Index h = 0; h < num_holes; ++h)
  {
    const auto hole = static_cast<std::size_t>(h);
    result.spread.push_back(spread_of(all, hole, flow.col(h)));
    result.neck(h) = holes[hole].wall_thickness / result.spread.back().area;
  }
  return result;
}

double conductance(const Eigen::MatrixXd& inertance)
{
  return inertance.inverse().sum();
}

} // namespace plate
