// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/parametric_model.h>
#include <plate/solvers/modal.h>

#include <functional>
#include <string>
#include <vector>

namespace plate
{

/// What to sweep over.
struct SweepOptions
{
  int num_modes = 12;   ///< tracks followed, started from the lowest modes of the first point
  int num_spare = 6;    ///< further modes solved at each point, so that a track may climb past others
  double tolerance = 1e-9; ///< as ModalOptions::tolerance
  /// Relative error of a frequency that points may have from a reduced model; 0: each point is solved in full.
  ///
  /// Used where there are so many points that it pays, see reduced_model_pays(); the parameters must leave the mesh as
  /// it is. A point where the model states a greater error is solved in full.
  double reduced_tolerance = 0.0;
  /// Called before each point with its index; return false to stop early.
  std::function<bool(std::size_t point, std::size_t num_points)> progress = nullptr;
};

/// One mode followed by shape through the sweep.
struct ModeTrack
{
  std::string name;                  ///< M1, M2, M5 or empty, from the shape at the first point
  std::vector<double> frequency_hz;  ///< per finished point; NaN where the track left the solved modes [Hz]
  std::vector<int> mode;             ///< number of the mode at each point, from 1; 0 where lost
  std::vector<double> likeness;      ///< modal assurance with the point it was followed from; 1 at the first point
};

/// Mesh and shapes of the tracks at one point, for pictures.
struct SweepShapes
{
  ShellMesh mesh;
  Eigen::MatrixXd normal_displacement; ///< (num_nodes, num_tracks)
};

/// Modes along a path or grid of parameters.
struct SweepResult
{
  std::vector<double> mass; ///< per finished point [kg]
  std::vector<ModeTrack> tracks;
  SweepShapes first;        ///< at the first point
  SweepShapes last;         ///< at the last finished point
  int num_solved = 0;       ///< full eigenproblems solved, points between the asked ones included
  int num_reduced = 0;      ///< points from a reduced model, those between included
  double reduced_error = 0.0; ///< greatest relative error that the reduced model states for one of these [-]
  bool complete = false;    ///< false if stopped early
};

/// Which mode each track of a sweep is at one point.
struct TrackedModes
{
  std::vector<int> mode;        ///< index from 0; -1 where lost
  std::vector<double> likeness; ///< with the point it was followed from [-]
};

/// Tracks that start from the lowest modes.
[[nodiscard]] TrackedModes first_modes(std::size_t num_tracks);

/// Follows tracks by shape, one to one, from one point to the next; those less than 0.3 alike are lost.
///
/// @param assurance  modal assurance between the modes of both points, as many or more at the next
[[nodiscard]] TrackedModes follow_modes(const TrackedModes& known, const Eigen::MatrixXd& assurance);

/// Adds a finished point to a result whose tracks are there.
void record_point(const TrackedModes& tracks, const Eigen::VectorXd& frequencies_hz, double mass, SweepResult& result);

/// Whether building a reduced model costs less than it saves: 8 full solves for one parameter, about 15 for two.
[[nodiscard]] bool reduced_model_pays(std::size_t num_points, std::size_t num_parameters);

/// Follows modes by shape over a grid of points, the last parameter running fastest.
///
/// Where a step changes shapes so much that the pairing is in doubt, points in between are solved too.
/// @param points  one vector of parameters per point, in grid order
/// @param row     points per row of the grid (points.size() for one parameter); a row is followed from the row before
/// @throws InvalidInput if there are no points or a point has no design
[[nodiscard]] SweepResult sweep(ParametricModel& design, const std::vector<std::vector<double>>& points, std::size_t row,
                                const SweepOptions& options = {});

} // namespace plate
