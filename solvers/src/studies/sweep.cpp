// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/studies/sweep.h>

#include <plate/core/error.h>
#include <plate/post/mode_compare.h>
#include <plate/post/mode_names.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/air_modes.h>
#include <plate/solvers/reduced_model.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>

namespace plate
{

namespace
{

using Point = std::vector<double>;

/// Modes of one design, and which of them each track is.
struct SolvedPoint
{
  ShellMesh mesh; // empty, as are the shapes, as long as only the reduced model needs to know them
  double mass = 0.0;
  Eigen::VectorXd frequencies_hz;
  ModeShapes shapes;
  ReducedModes reduced;           // empty after a full solve
  TrackedModes tracks;
};

/// Below this a pairing is in doubt and a point in between is solved; below `lost_below` the track is given up here.
constexpr double doubtful_below = 0.6;
constexpr double lost_below = 0.3;
constexpr int max_halvings = 3;

/// Ranges of the parameters over the points.
ParameterBox box_of(const std::vector<Point>& points)
{
  ParameterBox box = {points.front(), points.front()};
  for (const Point& point : points)
    for (std::size_t k = 0; k < point.size(); ++k)
    {
      box.low[k] = std::min(box.low[k], point[k]);
      box.high[k] = std::max(box.high[k], point[k]);
    }
  return box;
}

class Follower
{
public:
  Follower(ParametricModel& design, const SweepOptions& options, const std::vector<Point>& points)
      : design_(design), options_(options)
  {
    if (options.reduced_tolerance > 0.0 && reduced_model_pays(points.size(), points.front().size()))
      reduced_.emplace(design, box_of(points),
                       ReducedOptions{.num_modes = num_modes(), .tolerance = options.reduced_tolerance});
  }

  SolvedPoint solve(const Point& parameters)
  {
    if (!reduced_)
      return solve_in_full(design_.build(parameters));
    ReducedModes modes = reduced_->modes(parameters);
    if (!(modes.largest_error() <= options_.reduced_tolerance))
    {
      Model model = reduced_->model();
      design_.rebuild(parameters, model);
      return solve_in_full(std::move(model));
    }
    ++num_reduced_;
    reduced_error_ = std::max(reduced_error_, modes.largest_error());
    SolvedPoint point;
    point.mass = modes.mass;
    point.frequencies_hz = modes.frequencies_hz;
    point.reduced = std::move(modes);
    return point;
  }

  /// Makes sure that a point has its mesh and shapes.
  void complete(SolvedPoint& point) const
  {
    if (!point.mesh.nodes.empty())
      return;
    point.mesh = reduced_->model().mesh;
    point.shapes = mode_shapes(point.mesh, reduced_->dofs(), reduced_->shapes(point.reduced));
  }

  SolvedPoint start(const Point& parameters)
  {
    SolvedPoint point = solve(parameters);
    point.tracks = first_modes(static_cast<std::size_t>(options_.num_modes));
    return point;
  }

  /// Solves the point `to` and follows the tracks of a solved point to it.
  SolvedPoint follow(SolvedPoint& known, const Point& from, const Point& to)
  {
    SolvedPoint next = solve(to);
    pair(known, from, next, to, 0);
    return next;
  }

  void record_effort(SweepResult& result) const
  {
    result.num_solved = num_solved_;
    if (reduced_)
      result.num_solved += reduced_->figures().num_snapshots + reduced_->figures().num_checks;
    result.num_reduced = num_reduced_;
    result.reduced_error = reduced_error_;
  }

private:
  [[nodiscard]] int num_modes() const { return options_.num_modes + options_.num_spare; }

  SolvedPoint solve_in_full(Model model)
  {
    ++num_solved_;
    const System system = assembler_.assemble(model);
    const ModalResult modes =
        solve_modes(solver_, model, system, {.num_modes = num_modes(), .tolerance = options_.tolerance});
    if (modes.status != Status::converged)
      throw NumericalFailure(message("sweep: the modes did not converge; ", modes.summary()));
    SolvedPoint point;
    point.mass = system.mass;
    point.frequencies_hz = modes.frequencies_hz;
    point.shapes = mode_shapes(model.mesh, system.dofs, modes.shapes);
    point.mesh = std::move(model.mesh);
    return point;
  }

  [[nodiscard]] Eigen::MatrixXd assurance(SolvedPoint& known, SolvedPoint& next) const
  {
    if (known.reduced.shares.size() > 0 && next.reduced.shares.size() > 0)
      return reduced_->assurance(known.reduced, next.reduced);
    complete(known);
    complete(next);
    return modal_assurance(known.shapes, next.shapes);
  }

  void pair(SolvedPoint& known, const Point& from, SolvedPoint& next, const Point& to, int halvings)
  {
    next.tracks = follow_modes(known.tracks, assurance(known, next));
    const double least = *std::min_element(next.tracks.likeness.begin(), next.tracks.likeness.end());
    if (least >= doubtful_below || halvings == max_halvings)
      return;
    Point between(from.size());
    std::transform(from.begin(), from.end(), to.begin(), between.begin(),
                   [](double a, double b) { return 0.5 * (a + b); });
    SolvedPoint middle = solve(between);
    pair(known, from, middle, between, halvings + 1);
    pair(middle, between, next, to, halvings + 1);
  }

  ParametricModel& design_;
  const SweepOptions& options_;
  Assembler assembler_; // all points share the mesh, so they share what depends on it alone
  ModalSolver solver_;
  std::optional<ReducedModel> reduced_;
  int num_solved_ = 0;
  int num_reduced_ = 0;
  double reduced_error_ = 0.0;
};

Eigen::MatrixXd normal_shapes(const SolvedPoint& point)
{
  const auto nodes = static_cast<Eigen::Index>(point.mesh.nodes.size());
  Eigen::MatrixXd w = Eigen::MatrixXd::Zero(nodes, static_cast<Eigen::Index>(point.tracks.mode.size()));
  for (std::size_t t = 0; t < point.tracks.mode.size(); ++t)
    if (const int mode = point.tracks.mode[t]; mode >= 0)
      w.col(static_cast<Eigen::Index>(t)) =
          normal_displacement(point.mesh, point.shapes.displacement.col(mode).reshaped(3, nodes));
  return w;
}

} // namespace

bool reduced_model_pays(std::size_t num_points, std::size_t num_parameters)
{
  return num_points >= (num_parameters == 1 ? 24 : 40);
}

TrackedModes first_modes(std::size_t num_tracks)
{
  TrackedModes out{.mode = std::vector<int>(num_tracks), .likeness = std::vector<double>(num_tracks, 1.0)};
  std::iota(out.mode.begin(), out.mode.end(), 0);
  return out;
}

TrackedModes follow_modes(const TrackedModes& known, const Eigen::MatrixXd& assurance)
{
  const std::size_t num_tracks = known.mode.size();
  Eigen::MatrixXd score = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(num_tracks), assurance.cols());
  for (std::size_t t = 0; t < num_tracks; ++t)
    if (known.mode[t] >= 0)
      score.row(static_cast<Eigen::Index>(t)) = assurance.row(known.mode[t]);
  TrackedModes next{.mode = best_assignment(score), .likeness = std::vector<double>(num_tracks)};
  for (std::size_t t = 0; t < num_tracks; ++t)
  {
    next.likeness[t] = score(static_cast<Eigen::Index>(t), next.mode[t]);
    if (next.likeness[t] < lost_below)
      next.mode[t] = -1;
  }
  return next;
}

void record_point(const TrackedModes& tracks, const Eigen::VectorXd& frequencies_hz, double mass, SweepResult& result)
{
  result.mass.push_back(mass);
  for (std::size_t t = 0; t < result.tracks.size(); ++t)
  {
    ModeTrack& track = result.tracks[t];
    const int mode = tracks.mode[t];
    track.frequency_hz.push_back(mode < 0 ? std::numeric_limits<double>::quiet_NaN() : frequencies_hz(mode));
    track.mode.push_back(mode + 1);
    track.likeness.push_back(tracks.likeness[t]);
  }
}

SweepResult sweep(ParametricModel& design, const std::vector<Point>& points, std::size_t row,
                  const SweepOptions& options)
{
  if (points.empty() || row == 0)
    throw InvalidInput("sweep: needs at least one point and a row length of at least one");
  Follower follower(design, options, points);
  SweepResult result;
  result.tracks.resize(static_cast<std::size_t>(options.num_modes));
  SolvedPoint previous;
  SolvedPoint row_start;
  for (std::size_t i = 0; i < points.size(); ++i)
  {
    if (options.progress && !options.progress(i, points.size()))
      break;
    const bool starts_row = i % row == 0;
    SolvedPoint point = i == 0       ? follower.start(points[0])
                        : starts_row ? follower.follow(row_start, points[i - row], points[i])
                                     : follower.follow(previous, points[i - 1], points[i]);
    if (i == 0)
    {
      follower.complete(point);
      result.first = {point.mesh, normal_shapes(point)};
      const std::vector<std::string> names = name_modes(point.mesh, result.first.normal_displacement);
      for (std::size_t t = 0; t < names.size(); ++t)
        result.tracks[t].name = names[t];
    }
    record_point(point.tracks, point.frequencies_hz, point.mass, result);
    if (starts_row)
      row_start = point;
    previous = std::move(point);
    result.complete = i + 1 == points.size();
  }
  if (!result.mass.empty())
  {
    follower.complete(previous);
    result.last = {previous.mesh, normal_shapes(previous)};
  }
  follower.record_effort(result);
  return result;
}

} // namespace plate
