// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// A hole in a wall, seen square to it.
struct HoleOutline
{
  std::vector<Eigen::Vector2d> points; ///< closed polygon without crossings, either way round [m]
  double wall_thickness = 0.0;         ///< length of the neck [m]
};

/// How the flow of one hole spreads over it: shares of the flow at places, for a flow of 1.
struct HoleSpread
{
  std::vector<Eigen::Vector2d> points; ///< [m]
  Eigen::VectorXd shares;              ///< positive, their sum is 1
  double area;                         ///< [m2]
};

/// Flow of air through holes of a thin plane wall with still air on both sides.
///
/// The inertance of a hole is density * (one over its conductance): mass of the air for one unit of volume squared.
struct HoleFlow
{
  Eigen::MatrixXd one_side;       ///< inertance over density of the air on one side, (n, n) [1/m]
  Eigen::VectorXd neck;           ///< inertance over density of the air within the wall, thickness / area, (n) [1/m]
  std::vector<HoleSpread> spread; ///< (n)

  /// Inertance over density with both sides and the neck, (n, n): for a hole that opens into a uniform pressure [1/m].
  [[nodiscard]] Eigen::MatrixXd inertance() const;
};

/// How finely to compute.
struct HoleFlowOptions
{
  int cells_across = 6; ///< cells over the mean width of each hole: the conductance is 0.15 to 0.25 % high
};

/// Flow through holes that share one wall, each with one pressure over it.
///
/// Cells of a charge that grows towards the edge as one over the square root of the distance; their sizes follow the
/// mean width of the hole. Holes act on each other. The wall counts as an infinite plane: on a body the outer air finds
/// a little more room. Cost: half a second for two f-holes, as the third power of the number of cells.
/// @throws InvalidInput if there is no hole, an outline has less than three points or no area, or cells_across < 2
/// @throws NumericalFailure if the matrix of the cells is not positive definite
/// @source electrostatic analogy [Rayleigh1896] sec. 305-306; pinned by tests/unit/air/hole_flow_test.cpp
[[nodiscard]] HoleFlow hole_flow(const std::vector<HoleOutline>& holes, const HoleFlowOptions& options = {});

/// Conductance of holes that open into one pressure on either side: the sum of the inverse of their inertance [m].
///
/// @param inertance  over density, (n, n) [1/m]
[[nodiscard]] double conductance(const Eigen::MatrixXd& inertance);

} // namespace plate
