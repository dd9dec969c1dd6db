// SPDX-License-Identifier: MPL-2.0
#include "curve_spline.h"

#include "../gauss.h"
#include "smoothing.h"

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr int highest_degree = 5;        // curvature and its slope are continuous
constexpr int penalised = 3;             // derivative: arcs of any radius are smooth, changes of curvature cost
constexpr double most_intervals = 500.0; // of the whole curve: 2.5 mm on the outline of a viola
constexpr double per_point = 0.65;       // intervals: cross-validation does not follow more
constexpr int least_closed = 8;          // intervals of a curve without corners
constexpr int rounds = 4;                // of fitting and of finding the nearest places again

struct Run
{
  std::vector<std::size_t> points;
  std::vector<double> parameters; // way along the path [m]
};

Run run_between(const PointPath& path, std::size_t from, std::size_t num_steps)
{
  Run run{{from}, {0.0}};
  for (std::size_t k = 1; k <= num_steps; ++k)
  {
    const std::size_t next = path.on(run.points.back(), 1);
    run.parameters.push_back(run.parameters.back() + (path.points[next] - path.points[run.points.back()]).norm());
    run.points.push_back(next);
  }
  return run;
}

double way_round(const PointPath& path)
{
  return run_between(path, 0, path.size()).parameters.back();
}

int intervals_for(const Run& run, double whole)
{
  const double wanted =
      std::min(per_point * static_cast<double>(run.points.size()), most_intervals * run.parameters.back() / whole);
  return std::max(1, static_cast<int>(wanted));
}

SplineRun closed_run(const PointPath& path)
{
  Run run = run_between(path, 0, path.size());
  const double whole = run.parameters.back();
  run.points.pop_back();
  run.parameters.pop_back();
  const int intervals = std::max(least_closed, intervals_for({run.points, {whole}}, whole));
  SplineRun out{{highest_degree, 0.0, whole, intervals, SplineBasis::Ends::open}, {}, run.points, run.parameters};
  for (int k = 0; k < out.basis.size(); ++k)
    out.numbers.push_back(k % intervals);
  return out;
}

// A run between two corners; few points allow only a low degree.
SplineRun open_run(const Run& run, double whole, Eigen::Index from, Eigen::Index to, Eigen::Index& next)
{
  const auto n = static_cast<int>(run.points.size());
  const int degree = n <= 3 ? 1 : n == 4 ? 2 : std::min(highest_degree, n - 1);
  const int intervals = degree < highest_degree ? 1 : intervals_for(run, whole);
  SplineRun out{
      {degree, 0.0, run.parameters.back(), intervals, SplineBasis::Ends::clamped}, {from}, run.points, run.parameters};
  while (static_cast<int>(out.numbers.size()) < out.basis.size() - 1)
    out.numbers.push_back(next++);
  out.numbers.push_back(to);
  return out;
}

template <class F>
void for_terms(const SplineRun& run, const SplineBasis::Local& local, const F& f)
{
  for (int k = 0; k <= run.basis.degree(); ++k)
    f(run.numbers[static_cast<std::size_t>(local.first + k)], local.values[static_cast<std::size_t>(k)]);
}

Vector2d derivative(const SplineCurve& curve, const SplineRun& run, double parameter, int order)
{
  Vector2d sum = Vector2d::Zero();
  if (order > run.basis.degree())
    return sum;
  for_terms(run, run.basis.at(parameter, order),
            [&](Eigen::Index number, double value) { sum += value * curve.coefficients.row(number).transpose(); });
  return sum;
}

void add_roughness(const SplineRun& run, std::vector<Eigen::Triplet<double>>& entries)
{
  if (run.basis.degree() < penalised)
    return;
  const double h = run.basis.step();
  for (int k = 0; k < run.basis.intervals(); ++k)
    for (const auto& [x, w] : gauss_points_16)
    {
      const SplineBasis::Local b = run.basis.at(run.basis.low() + h * (k + x), penalised);
      const double weight = w * h; // not a binding: Clang 14 captures none
      for_terms(run, b,
                [&](Eigen::Index i, double bi) {
                  for_terms(run, b, [&](Eigen::Index j, double bj) { entries.emplace_back(i, j, weight * bi * bj); });
                });
    }
}

// Corners belong to two runs and count once.
bool counts(const SplineCurve& curve, const SplineRun& run, std::size_t k)
{
  return curve.closed || k + 1 < run.points.size();
}

void solve(SplineCurve& curve, const PointPath& path, const std::vector<char>& used,
           const Eigen::SparseMatrix<double>& roughness)
{
  std::vector<Eigen::Triplet<double>> entries;
  std::vector<Vector2d> values;
  for (const SplineRun& run : curve.runs)
    for (std::size_t k = 0; k < run.points.size(); ++k)
    {
      if (used[run.points[k]] == 0 || !counts(curve, run, k))
        continue;
      const auto row = static_cast<int>(values.size());
      for_terms(run, run.basis.at(run.parameters[k], 0),
                [&](Eigen::Index number, double value) { entries.emplace_back(row, number, value); });
      values.push_back(path.points[run.points[k]]);
    }
  const auto n = static_cast<Eigen::Index>(values.size());
  SmoothingProblem problem{
      .basis = {n, roughness.rows()}, .roughness = roughness, .order = penalised, .values = Eigen::MatrixX2d(n, 2)};
  problem.basis.setFromTriplets(entries.begin(), entries.end());
  for (Eigen::Index i = 0; i < n; ++i)
    problem.values.row(i) = values[static_cast<std::size_t>(i)].transpose();
  curve.coefficients = solve_smoothing(problem).coefficients;
}

} // namespace

SplineCurve make_spline_curve(const PointPath& path, const std::vector<std::size_t>& corners)
{
  SplineCurve curve{.runs = {}, .coefficients = {}, .closed = corners.empty()};
  auto next = static_cast<Eigen::Index>(corners.size());
  if (curve.closed)
  {
    curve.runs.push_back(closed_run(path));
    next = curve.runs[0].basis.intervals();
  }
  const double whole = way_round(path);
  for (std::size_t c = 0; c < corners.size(); ++c)
  {
    const std::size_t to = (c + 1) % corners.size();
    const std::size_t steps = to > c ? corners[to] - corners[c] : corners[to] + path.size() - corners[c];
    curve.runs.push_back(open_run(run_between(path, corners[c], steps), whole, static_cast<Eigen::Index>(c),
                                  static_cast<Eigen::Index>(to), next));
  }
  curve.coefficients = Eigen::MatrixX2d::Zero(next, 2);
  return curve;
}

void fit_spline_curve(SplineCurve& curve, const PointPath& path, const std::vector<char>& used)
{
  std::vector<Eigen::Triplet<double>> entries;
  for (const SplineRun& run : curve.runs)
    add_roughness(run, entries);
  Eigen::SparseMatrix<double> roughness(curve.coefficients.rows(), curve.coefficients.rows());
  roughness.setFromTriplets(entries.begin(), entries.end());
  for (int round = 0; round < rounds; ++round)
  {
    solve(curve, path, used, roughness);
    for (SplineRun& run : curve.runs)
      for (std::size_t k = curve.closed ? 0 : 1; k < run.points.size() - (curve.closed ? 0 : 1); ++k)
        run.parameters[k] = nearest_parameter(curve, run, path.points[run.points[k]], run.parameters[k]);
  }
}

std::vector<double> distances(const SplineCurve& curve, const PointPath& path)
{
  std::vector<double> out(path.size(), 0.0);
  for (const SplineRun& run : curve.runs)
    for (std::size_t k = 0; k < run.points.size(); ++k)
    {
      if (!counts(curve, run, k))
        continue;
      const CurvePoint place = evaluate(curve, run, run.parameters[k]);
      const Vector2d offset = path.points[run.points[k]] - place.position;
      out[run.points[k]] = std::copysign(offset.norm(), place.left().dot(offset));
    }
  return out;
}

CurvePoint evaluate(const SplineCurve& curve, const SplineRun& run, double parameter)
{
  return {.position = derivative(curve, run, parameter, 0),
          .first = derivative(curve, run, parameter, 1),
          .second = derivative(curve, run, parameter, 2)};
}

double end_of(const SplineRun& run)
{
  return run.basis.low() + run.basis.step() * run.basis.intervals();
}

double nearest_parameter(const SplineCurve& curve, const SplineRun& run, const Vector2d& point, double parameter)
{
  constexpr int most_steps = 8;
  const double longest = 0.5 * run.basis.step();
  for (int k = 0; k < most_steps; ++k)
  {
    const CurvePoint c = evaluate(curve, run, parameter);
    const Vector2d offset = point - c.position;
    const double slope = c.first.squaredNorm();
    // Newton's method where the point is closer than the centre of curvature, else a step that cannot go astray.
    const double bend = std::max(slope - offset.dot(c.second), 0.3 * slope);
    const double step = std::clamp(offset.dot(c.first) / bend, -longest, longest);
    double next = parameter + step;
    if (curve.closed)
      next -= end_of(run) * std::floor(next / end_of(run));
    else
      next = std::clamp(next, 0.0, end_of(run));
    if (!(std::abs(step) > 1e-9 * longest))
      break;
    parameter = next;
  }
  return parameter;
}

} // namespace plate
