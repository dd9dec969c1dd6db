// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/curve_fit.h>

#include "corner_search.h"
#include "curve_pieces.h"
#include "curve_spline.h"
#include "point_checks.h"
#include "point_path.h"
#include "robust.h"
#include "summarise.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr double least_outlier = 1e-3; // over the diagonal of the curve: what a fit cannot follow is no outlier
constexpr double most_outliers = 0.2;  // of the points
constexpr double most_spikes = 0.02;   // of the points; more are noise
constexpr std::size_t most_corners = 400;
constexpr int most_rounds = 12;
constexpr double true_corner = 25.0 * std::numbers::pi / 180.0; // turn of a fitted corner, less is noise
constexpr double piece_error = 0.15;                            // of the pieces from the splines, over the noise
constexpr double least_piece_error = 1e-5; // over the diagonal: 5 micrometres on a viola, far below any noise

// Turn of the fitted curve at the start of a run with corners.
double turn_at(const SplineCurve& curve, std::size_t run)
{
  const SplineRun& before = curve.runs[(run + curve.runs.size() - 1) % curve.runs.size()];
  const Vector2d in = evaluate(curve, before, end_of(before)).tangent();
  const Vector2d out = evaluate(curve, curve.runs[run], 0.0).tangent();
  return std::abs(std::atan2(in.x() * out.y() - in.y() * out.x(), in.dot(out)));
}

class CurveFitter
{
public:
  CurveFitter(PointPath path, std::vector<std::size_t> corners, bool found)
      : path_(std::move(path)), corners_(std::move(corners)), found_(found), diagonal_(box_of(path_.points).diagonal()),
        used_(path_.size(), 1)
  {
  }

  // Fits, leaves out what does not fit, and revises the corners found, until nothing changes.
  void run()
  {
    for (int round = 0; round < most_rounds; ++round)
    {
      fit();
      if (!found_ || !(add_missed_corners() || drop_false_corners()))
        return;
    }
  }

  [[nodiscard]] CurveLoop loop() const
  {
    return pieces_of(curve_, std::max(piece_error * report().rms, least_piece_error * diagonal_));
  }

  [[nodiscard]] FitReport report() const
  {
    std::vector<FitResidual> residuals;
    for (std::size_t i = 0; i < path_.size(); ++i)
      residuals.push_back({.point = path_.origin[i], .place = path_.points[i], .residual = residuals_[i]});
    return summarise(residuals, used_);
  }

  // Distance of a point that was left out before the fit, near a point of the path [m].
  [[nodiscard]] double distance(const Vector2d& point, std::size_t near) const
  {
    for (const SplineRun& run : curve_.runs)
      if (const auto k = std::find(run.points.begin(), run.points.end(), near); k != run.points.end())
      {
        const double start = run.parameters[static_cast<std::size_t>(k - run.points.begin())];
        return (evaluate(curve_, run, nearest_parameter(curve_, run, point, start)).position - point).norm();
      }
    return 0.0;
  }

private:
  void fit()
  {
    curve_ = make_spline_curve(path_, corners_);
    for (int round = 0; round < most_rounds; ++round)
    {
      fit_spline_curve(curve_, path_, used_);
      residuals_ = distances(curve_, path_);
      if (!drop_outliers())
        return;
    }
  }

  bool drop_outliers()
  {
    std::vector<double> in_use;
    for (std::size_t i = 0; i < path_.size(); ++i)
      if (used_[i] != 0)
        in_use.push_back(residuals_[i]);
    const double limit = std::max(outlier_deviations * robust_deviation(in_use), least_outlier * diagonal_);
    std::vector<char> used = used_;
    const bool changed = choose_used(residuals_, limit, used);
    for (const std::size_t c : corners_)
      used[c] = 1;
    const auto out = static_cast<std::size_t>(std::count(used.begin(), used.end(), 0));
    if (static_cast<double>(out) > most_outliers * static_cast<double>(path_.size()))
      throw InvalidInput(message("points: ", out, " of ", path_.size(),
                                 " do not fit a smooth curve through the others; mark its corners, or see that the "
                                 "points are in order"));
    const bool differs = used != used_;
    used_ = used;
    return changed && differs;
  }

  // Several outliers in a row are none: there is a corner that the smooth curve cut off, where it is furthest away.
  bool add_missed_corners()
  {
    const std::size_t before = corners_.size();
    for (std::size_t i = 0; i < path_.size(); ++i)
    {
      if (used_[i] != 0 || used_[path_.on(i, -1)] == 0)
        continue;
      std::size_t furthest = i;
      std::size_t end = i;
      for (; used_[end] == 0; end = path_.on(end, 1))
        if (std::abs(residuals_[end]) > std::abs(residuals_[furthest]))
          furthest = end;
      if (end != path_.on(i, 1) && tried_.insert(furthest).second)
        corners_.push_back(furthest);
    }
    if (corners_.size() == before)
      return false;
    std::sort(corners_.begin(), corners_.end());
    used_.assign(path_.size(), 1);
    return true;
  }

  bool drop_false_corners()
  {
    std::vector<std::size_t> true_ones;
    for (std::size_t c = 0; c < corners_.size(); ++c)
      if (turn_at(curve_, c) >= true_corner)
        true_ones.push_back(corners_[c]);
    const bool changed = true_ones.size() < corners_.size();
    corners_ = std::move(true_ones);
    return changed;
  }

  PointPath path_;
  std::vector<std::size_t> corners_;
  bool found_;                  // not given
  std::set<std::size_t> tried_; // corners added once
  double diagonal_;
  std::vector<char> used_;
  SplineCurve curve_;
  std::vector<double> residuals_;
};

// Given corners as indices into the path.
std::vector<std::size_t> corners_on(const PointPath& path, std::vector<std::size_t> given)
{
  std::sort(given.begin(), given.end());
  std::vector<std::size_t> corners;
  for (std::size_t i = 0; i < path.size(); ++i)
    if (std::binary_search(given.begin(), given.end(), path.origin[i]))
      corners.push_back(i);
  return corners;
}

void check_counts(std::size_t points, std::size_t spikes, std::size_t corners)
{
  if (static_cast<double>(spikes) > most_spikes * static_cast<double>(points))
    throw InvalidInput(message("points: ", spikes, " of ", points,
                               " stick out of a curve through the others; see that the points are in order"));
  if (corners > most_corners)
    throw InvalidInput(message("points: ", corners, " corners; a curve may have ", most_corners,
                               "; mark those that are true with the column corner"));
}

} // namespace

CurveFit fit_closed_curve(std::span<const Vector2d> points, const std::optional<std::vector<std::size_t>>& corners)
{
  const PointPath path = ordered_path(points);
  std::vector<char> spikes = find_spikes(path);
  if (corners)
    for (const std::size_t c : corners_on(path, *corners))
      spikes[c] = 0;
  const PointPath calm = path.without(spikes);
  std::vector<std::size_t> bends = corners ? corners_on(calm, *corners) : find_corners(calm);
  check_counts(path.size(), path.size() - calm.size(), bends.size());
  CurveFitter fitter(calm, std::move(bends), !corners);
  fitter.run();
  CurveFit fit{.loop = fitter.loop(), .report = fitter.report()};
  std::vector<FitResidual>& outliers = fit.report.outliers;
  std::size_t passed = 0; // points of the calm path
  for (std::size_t i = 0; i < path.size(); ++i)
    if (spikes[i] == 0)
      ++passed;
    else
      outliers.push_back({.point = path.origin[i],
                          .place = path.points[i],
                          .residual = fitter.distance(path.points[i], passed % calm.size())});
  std::sort(outliers.begin(), outliers.end(),
            [](const FitResidual& a, const FitResidual& b) { return a.point < b.point; });
  return fit;
}

} // namespace plate
