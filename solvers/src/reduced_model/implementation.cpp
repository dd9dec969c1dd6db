// SPDX-License-Identifier: MPL-2.0
#include "implementation.h"

#include "residual_sketch.h"

#include <plate/core/error.h>
#include <plate/core/units.h>
#include <plate/post/mode_compare.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{

using namespace reduced;

namespace
{

constexpr int num_spare = 6;   // further modes of a snapshot, so that a mode that falls from above is known too
constexpr int num_fields = 32; // random fields: their norm is within a quarter in nineteen cases of twenty
constexpr double least_effectivity = 0.2; // the estimate counts the gap to the next mode at its worst
constexpr double safety = 1.5;            // on the estimate, for that quarter and for points unlike those checked
constexpr double share_of_terms = 0.3;   // of the tolerance, for what the terms miss: half of it is left in a frequency
constexpr double share_of_dropped = 0.1; // of the tolerance, for parts of snapshots left out

std::vector<Point> training_points(const ParameterBox& box)
{
  std::vector<Point> points = {centre_of(box)};
  const std::vector<Point> corners = corners_of(box, 16);
  points.insert(points.end(), corners.begin(), corners.end());
  const std::vector<Point> inside = inner_points(box, std::min<std::size_t>(200, 8 + 16 * box.low.size()));
  points.insert(points.end(), inside.begin(), inside.end());
  return points;
}

std::vector<Point> first_snapshots(const ParameterBox& box)
{
  std::vector<Point> places = {centre_of(box)};
  const std::vector<Point> corners = corners_of(box, 4);
  places.insert(places.end(), corners.begin(), corners.end());
  return places;
}

} // namespace

ReducedModel::Implementation::Implementation(ParametricModel& parametric, ParameterBox ranges,
                                             const ReducedOptions& wanted)
    : design(parametric), box(std::move(ranges)), options(wanted), points(training_points(box)),
      reference(design.build(points.front())), covers(without_torsion(triangle_covers(reference))),
      plain(assemble(without_point_masses(reference))), shift(std::pow(two_pi * plain.typical_frequency_hz, 2)),
      map(design, box, reference, covers, points, share_of_terms * options.tolerance),
      system(design, reference, covers, plain.dofs, map,
             energy_fields(without_point_masses(reference), plain, shift, num_fields)),
      energy_(energy_matrix(plain, shift))
{
  for (const Point& point : points)
    candidates.push_back(map.at(point));
  if (plain.rigid_motions.cols() > 0)
    add_vectors(plain.rigid_motions, 0.0);
  add_snapshots(first_snapshots(box));
  improve();
  if (reference.air_density > 0.0)
    system.add_air();
  finish();
}

/// Lowest modes of the full model in vacuo.
ModalResult ReducedModel::Implementation::solve(const Point& point)
{
  Model model = reference;
  design.rebuild(point, model);
  ModalResult modes = solve_modes(assemble(model), {.num_modes = options.num_modes + num_spare});
  if (modes.status != Status::converged)
    throw NumericalFailure(message("ReducedModel: the modes of a snapshot did not converge; ", modes.summary()));
  return modes;
}

void ReducedModel::Implementation::add_vectors(const Eigen::MatrixXd& shapes, double drop)
{
  const Vectors added = new_vectors(system.basis(), energy_, shapes, drop);
  if (added.cols() > 0)
    system.extend(added);
  middle = system.combined(candidates.front());
}

void ReducedModel::Implementation::add_snapshots(const std::vector<Point>& places)
{
  Eigen::MatrixXd shapes(plain.dofs.num_equations, 0);
  for (const Point& place : places)
  {
    const ModalResult modes = solve(place);
    if (figures.num_snapshots > 0)
      calibrate(map.at(place), modes);
    shapes.conservativeResize(Eigen::NoChange, shapes.cols() + modes.shapes.cols());
    shapes.rightCols(modes.shapes.cols()) = modes.shapes;
  }
  figures.num_snapshots += static_cast<int>(places.size());
  // An eigenvalue errs by the square of what a vector lacks; below a millionth of it there is only rounding.
  add_vectors(shapes, std::max(1e-6, std::sqrt(share_of_dropped * options.tolerance)));
}

EstimatedModes ReducedModel::Implementation::estimate(const Coefficients& coefficients) const
{
  return estimated_modes(system, coefficients, middle, shift, plain.rigid_motions.cols(), options.num_modes, num_spare);
}

Eigen::VectorXd ReducedModel::Implementation::errors(const EstimatedModes& modes) const
{
  return safety * figures.effectivity * modes.residual_errors + modes.other_errors;
}

/// Holds the estimate at a point against the full solve there.
void ReducedModel::Implementation::calibrate(const Coefficients& coefficients, const ModalResult& full)
{
  const EstimatedModes reduced = estimate(coefficients);
  double greatest = least_effectivity;
  for (Eigen::Index j = 0; j < options.num_modes; ++j)
  {
    const double frequency = std::sqrt(reduced.modes.eigenvalues(j)) / two_pi;
    const double error = std::abs(frequency / full.frequencies_hz(j) - 1.0) - reduced.other_errors(j);
    greatest = std::max(greatest, error / reduced.residual_errors(j));
  }
  figures.effectivity = figures.num_checks == 0 ? greatest : std::max(figures.effectivity, greatest);
  ++figures.num_checks;
}

/// Adds snapshots where the estimate is worst until it is good everywhere and a full solve bears it out.
void ReducedModel::Implementation::improve()
{
  while (true)
  {
    const std::vector<Point> worst = worst_points();
    figures.converged = worst.empty();
    if (!figures.converged)
    {
      if (figures.num_snapshots + static_cast<int>(worst.size()) > options.max_snapshots)
        return;
      add_snapshots(worst);
      continue;
    }
    const double before = figures.effectivity;
    const Point check = inner_points(box, 1, points.size() + static_cast<std::size_t>(figures.num_checks)).front();
    calibrate(map.at(check), solve(check));
    if (figures.effectivity <= before)
      return;
  }
}

/// Points with the greatest estimate above the tolerance, apart from each other; at most one per parameter.
std::vector<Point> ReducedModel::Implementation::worst_points()
{
  constexpr double reach = 0.7; // of half the box: a snapshot mends its surroundings too
  std::vector<double> estimates;
  for (const Coefficients& candidate : candidates)
    estimates.push_back(errors(estimate(candidate)).maxCoeff());
  figures.largest_error = *std::max_element(estimates.begin(), estimates.end());
  std::vector<Point> worst;
  while (worst.size() < box.low.size())
  {
    const auto greatest = std::max_element(estimates.begin(), estimates.end());
    if (*greatest <= options.tolerance)
      break;
    const Point& place = points[static_cast<std::size_t>(greatest - estimates.begin())];
    worst.push_back(place);
    for (std::size_t i = 0; i < points.size(); ++i)
      if ((unit_coordinates(box, points[i]) - unit_coordinates(box, place)).norm() < reach)
        estimates[i] = 0.0;
  }
  return worst;
}

void ReducedModel::Implementation::finish()
{
  figures.num_vectors = static_cast<int>(system.basis().cols());
  figures.num_stiffness_terms = static_cast<int>(map.terms().stiffness.size() + map.torsion().num_terms());
  figures.num_mass_terms = static_cast<int>(map.terms().mass.size() + reference.masses.size());
  middle = system.combined(candidates.front());
  displacement_products = shape_products(mode_shapes(reference.mesh, plain.dofs, system.basis()));
}

} // namespace plate
