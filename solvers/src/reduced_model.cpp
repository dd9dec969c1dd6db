// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/reduced_model.h>

#include "reduced_model/mode_estimates.h"
#include "reduced_model/residual_sketch.h"
#include "reduced_model/same_plate.h"
#include "reduced_model/snapshot_vectors.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/modal.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace plate
{

namespace
{

using namespace reduced;

constexpr double two_pi = 2.0 * std::numbers::pi;
constexpr int num_spare = 6;   // further modes of a snapshot, so that a mode that falls from above is known too
constexpr int num_fields = 32; // random fields: their norm is within a quarter in nineteen cases of twenty
constexpr double least_effectivity = 0.2; // the estimate counts the gap to the next mode at its worst
constexpr double safety = 1.5;            // on the estimate, for that quarter and for points unlike those checked

Model without_point_masses(Model model)
{
  model.masses.clear();
  return model;
}

/// Points at which the terms of stiffness and mass are looked for, and at which the error is.
std::vector<Point> training_points(const ParameterBox& box)
{
  const std::size_t size = box.low.size();
  std::vector<Point> points = {centre_of(box)};
  const std::vector<Point> corners = corners_of(box, 16);
  points.insert(points.end(), corners.begin(), corners.end());
  const std::vector<Point> inside = inner_points(box, std::min<std::size_t>(200, 8 + 16 * size));
  points.insert(points.end(), inside.begin(), inside.end());
  return points;
}

void check_options(const ReducedOptions& options)
{
  if (options.num_modes < 1 || options.max_snapshots < 1 || !(options.tolerance > 0.0))
    throw InvalidInput(
        message("ReducedModel: num_modes and max_snapshots must be at least 1 and tolerance positive; got ",
                options.num_modes, ", ", options.max_snapshots, ", ", options.tolerance));
}

} // namespace

double ReducedModes::largest_error() const
{
  return errors_hz.cwiseQuotient(frequencies_hz).maxCoeff();
}

struct ReducedModel::Implementation
{
  Implementation(ParametricModel& parametric, ParameterBox ranges, const ReducedOptions& wanted)
      : design(parametric), box(std::move(ranges)), options(wanted), points(training_points(box)),
        reference(design.build(points.front())), covers(without_torsion(triangle_covers(reference))),
        plain(assemble(without_point_masses(reference))), shift(std::pow(two_pi * plain.typical_frequency_hz, 2)),
        energy(energy_matrix(plain, shift)),
        map(design, box, reference, covers, points, share_of_terms * options.tolerance),
        system(design, reference, covers, plain.dofs, map,
               energy_fields(without_point_masses(reference), plain, shift, num_fields))
  {
    num_rigid = plain.rigid_motions.cols();
    if (num_rigid > 0)
      add_vectors(plain.rigid_motions, 0.0);
    for (const Point& point : points)
      candidates.push_back(map.at(point));
    std::vector<Point> first = {points.front()};
    const std::vector<Point> corners = corners_of(box, 4);
    first.insert(first.end(), corners.begin(), corners.end());
    add_snapshots(first);
    improve();
    if (reference.air_density > 0.0)
      system.add_air();
    finish();
  }

  static constexpr double share_of_terms = 0.1; // of the tolerance, for what the terms miss; snapshots have the rest

  /// Lowest modes of the full model in vacuo.
  ModalResult solve(const Point& point)
  {
    Model model = reference;
    design.rebuild(point, model);
    ModalResult modes = solve_modes(assemble(model), {.num_modes = options.num_modes + num_spare});
    if (modes.status != Status::converged)
      throw NumericalFailure(message("ReducedModel: the modes of a snapshot did not converge; ", modes.summary()));
    return modes;
  }

  void add_vectors(const Eigen::MatrixXd& shapes, double drop)
  {
    const Vectors added = new_vectors(system.basis(), energy, shapes, drop);
    if (added.cols() > 0)
      system.extend(added);
    middle = system.combined(candidates.empty() ? map.at(points.front()) : candidates.front());
  }

  void add_snapshots(const std::vector<Point>& places)
  {
    Eigen::MatrixXd shapes(plain.dofs.num_equations, 0);
    for (const Point& place : places)
    {
      const ModalResult modes = solve(place);
      if (figures.num_snapshots > 0)
        calibrate(map.at(place), modes);
      shapes.conservativeResize(Eigen::NoChange, shapes.cols() + modes.shapes.cols());
      shapes.rightCols(modes.shapes.cols()) = modes.shapes;
      taken.push_back(place);
    }
    figures.num_snapshots = static_cast<int>(taken.size());
    // An eigenvalue errs by the square of what a vector lacks.
    add_vectors(shapes, std::sqrt(0.1 * options.tolerance));
  }

  [[nodiscard]] EstimatedModes estimate(const Coefficients& coefficients) const
  {
    return estimated_modes(system, coefficients, middle, shift, num_rigid, options.num_modes, num_spare);
  }

  [[nodiscard]] Eigen::VectorXd errors(const EstimatedModes& modes) const
  {
    return safety * figures.effectivity * modes.residual_errors + modes.other_errors;
  }

  /// Holds the estimate at a point against the full solve there.
  void calibrate(const Coefficients& coefficients, const ModalResult& full)
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
  void improve()
  {
    while (true)
    {
      const std::vector<Point> worst = worst_points();
      figures.converged = worst.empty();
      if (figures.converged)
      {
        const double before = figures.effectivity;
        const Point check = inner_points(box, 1, points.size() + static_cast<std::size_t>(figures.num_checks)).front();
        calibrate(map.at(check), solve(check));
        if (figures.effectivity <= before)
          return;
      }
      else if (figures.num_snapshots + static_cast<int>(worst.size()) > options.max_snapshots)
        return;
      else
        add_snapshots(worst);
    }
  }

  /// Points with the greatest estimate above the tolerance, apart from each other; at most one per parameter.
  [[nodiscard]] std::vector<Point> worst_points()
  {
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
      // A snapshot mends its surroundings too.
      constexpr double reach = 0.7; // of half the box
      for (std::size_t i = 0; i < points.size(); ++i)
        if ((unit_coordinates(box, points[i]) - unit_coordinates(box, place)).norm() < reach)
          estimates[i] = 0.0;
    }
    return worst;
  }

  void finish()
  {
    figures.num_vectors = static_cast<int>(system.basis().cols());
    figures.num_stiffness_terms = static_cast<int>(map.terms().stiffness.size() + map.torsion().num_terms());
    figures.num_mass_terms = static_cast<int>(map.terms().mass.size() + reference.masses.size());
    middle = system.combined(candidates.front());
    const Eigen::VectorXd weight = nodal_weights();
    displacement_products = system.basis().transpose() * (weight.asDiagonal() * system.basis());
  }

  /// Volume that the displacements of each node stand for, per unknown; none for rotations.
  [[nodiscard]] Eigen::VectorXd nodal_weights() const
  {
    const Eigen::VectorXd areas = nodal_areas(reference.mesh);
    Eigen::VectorXd weights = Eigen::VectorXd::Zero(plain.dofs.num_equations);
    for (std::size_t node = 0; node < reference.mesh.nodes.size(); ++node)
      for (std::size_t k = 0; k < 3; ++k)
        if (const int equation = plain.dofs.equation[node][k]; equation != DofMap::held)
          weights(equation) = areas(static_cast<Eigen::Index>(node)) * reference.mesh.thickness[node];
    return weights;
  }

  ParametricModel& design;
  ParameterBox box;
  ReducedOptions options;
  std::vector<Point> points; // the first is the middle
  Model reference;
  std::vector<TriangleCover> covers;
  System plain; // of the reference without point masses
  double shift; // [1/s2]
  EnergyMatrix energy;
  CoefficientMap map;
  ReducedSystem system;
  Eigen::Index num_rigid = 0;
  std::vector<Coefficients> candidates; // at the points
  std::vector<Point> taken;             // snapshots
  ReducedPair middle;                   // stiffness and mass in the middle of the box
  ReducedFigures figures = {.effectivity = 1.0};
  Eigen::MatrixXd displacement_products;
};

ReducedModel::ReducedModel(ParametricModel& design, ParameterBox box, const ReducedOptions& options)
{
  check_box(box);
  check_options(options);
  implementation_ = std::make_unique<Implementation>(design, std::move(box), options);
}

ReducedModel::~ReducedModel() = default;
ReducedModel::ReducedModel(ReducedModel&&) noexcept = default;
ReducedModel& ReducedModel::operator=(ReducedModel&&) noexcept = default;

ReducedModes ReducedModel::modes(std::span<const double> parameters) const
{
  check_inside(implementation_->box, parameters);
  const Coefficients coefficients = implementation_->map.at(parameters);
  EstimatedModes estimated = implementation_->estimate(coefficients);
  ReducedModes out;
  out.frequencies_hz = estimated.modes.eigenvalues.cwiseSqrt() / two_pi;
  out.errors_hz = implementation_->errors(estimated).cwiseProduct(out.frequencies_hz);
  out.shares = std::move(estimated.modes.vectors);
  out.mass = implementation_->system.mass(coefficients);
  return out;
}

Eigen::MatrixXd ReducedModel::slopes(std::span<const double> parameters, const ReducedModes& modes) const
{
  const ParameterBox& box = implementation_->box;
  check_inside(box, parameters);
  Eigen::MatrixXd slopes(modes.frequencies_hz.size(), static_cast<Eigen::Index>(parameters.size()));
  for (std::size_t k = 0; k < parameters.size(); ++k)
  {
    // Coefficients are smooth: a step of a thousandth of the box loses a millionth; it turns inward at the faces.
    const double step = 1e-3 * (box.high[k] - box.low[k]);
    Point below(parameters.begin(), parameters.end());
    Point above = below;
    below[k] = std::max(box.low[k], parameters[k] - step);
    above[k] = std::min(box.high[k], parameters[k] + step);
    ReducedPair change = implementation_->system.combined(implementation_->map.at(above));
    const ReducedPair lower = implementation_->system.combined(implementation_->map.at(below));
    change.stiffness.add(-1.0, lower.stiffness);
    change.mass.add(-1.0, lower.mass);
    for (Eigen::Index j = 0; j < slopes.rows(); ++j)
    {
      const double omega = two_pi * modes.frequencies_hz(j);
      const Eigen::VectorXd y = modes.shares.col(j);
      const double lambda_change = change.stiffness.form(y) - omega * omega * change.mass.form(y);
      slopes(j, static_cast<Eigen::Index>(k)) = lambda_change / (above[k] - below[k]) / (2.0 * omega * two_pi);
    }
  }
  return slopes;
}

Eigen::MatrixXd ReducedModel::shapes(const ReducedModes& modes) const
{
  return implementation_->system.basis() * modes.shares;
}

Eigen::MatrixXd ReducedModel::assurance(const ReducedModes& a, const ReducedModes& b) const
{
  const Eigen::MatrixXd& products = implementation_->displacement_products;
  const Eigen::MatrixXd weighted = products * b.shares;
  const Eigen::VectorXd aa = a.shares.cwiseProduct(products * a.shares).colwise().sum();
  const Eigen::VectorXd bb = b.shares.cwiseProduct(weighted).colwise().sum();
  return (a.shares.transpose() * weighted).cwiseAbs2().cwiseQuotient(aa * bb.transpose());
}

const Model& ReducedModel::model() const
{
  return implementation_->reference;
}

const DofMap& ReducedModel::dofs() const
{
  return implementation_->plain.dofs;
}

const ParameterBox& ReducedModel::box() const
{
  return implementation_->box;
}

const ReducedFigures& ReducedModel::figures() const
{
  return implementation_->figures;
}

std::string ReducedModel::summary() const
{
  const ReducedFigures& f = implementation_->figures;
  return message(f.num_vectors, " vectors of ", f.num_snapshots, " snapshots, ", f.num_stiffness_terms, " and ",
                 f.num_mass_terms, " terms of stiffness and mass, largest relative error ", f.largest_error,
                 f.converged ? "" : " (not converged)");
}

} // namespace plate
