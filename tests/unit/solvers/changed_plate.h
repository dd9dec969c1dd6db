// SPDX-License-Identifier: MPL-2.0
// One model as a function of parameters, and what tests of reduced models ask of it.
#pragma once

#include "sample_models.h"

#include <plate/assembly/parametric_model.h>
#include <plate/solvers/air_modes.h>
#include <plate/solvers/reduced_model.h>

#include <functional>
#include <random>
#include <span>
#include <utility>
#include <vector>

namespace plate::test
{

/// A model that a function changes to the parameters.
class ChangedPlate : public ParametricModel
{
public:
  using Change = std::function<void(std::span<const double> parameters, Model& model)>;
  ChangedPlate(Model base, Change change) : base_(std::move(base)), change_(std::move(change)) {}

  Model build(std::span<const double> parameters) override
  {
    Model model = base_;
    change_(parameters, model);
    return model;
  }
  void rebuild(std::span<const double> parameters, Model& model) override { change_(parameters, model); }

private:
  Model base_;
  Change change_;
};

inline ModalResult full_modes(ParametricModel& design, std::span<const double> point, int num_modes)
{
  const Model model = design.build(point);
  return solve_modes(model, assemble(model), {.num_modes = num_modes});
}

/// Points of a box, evenly distributed, the same on every run.
inline std::vector<std::vector<double>> random_points(const ParameterBox& box, int count)
{
  std::mt19937 random(7);
  std::vector<std::vector<double>> points;
  for (int i = 0; i < count; ++i)
  {
    std::vector<double>& point = points.emplace_back();
    for (std::size_t k = 0; k < box.low.size(); ++k)
      point.push_back(box.low[k] + (box.high[k] - box.low[k]) * static_cast<double>(random()) / 4294967296.0);
  }
  return points;
}

/// How a reduced model stands beside full solves at random points.
struct Comparison
{
  double largest_error = 0.0; ///< relative, of a frequency
  double share_within = 0.0;  ///< of all frequencies: error within the estimate
  double mean_estimate = 0.0; ///< relative
};

inline Comparison compare(ParametricModel& design, const ReducedModel& reduced, int num_points, int num_modes)
{
  Comparison out;
  for (const std::vector<double>& point : random_points(reduced.box(), num_points))
  {
    const ReducedModes modes = reduced.modes(point);
    const Eigen::VectorXd full = full_modes(design, point, num_modes).frequencies_hz;
    const Eigen::VectorXd errors = (modes.frequencies_hz - full).cwiseAbs();
    out.largest_error = std::max(out.largest_error, errors.cwiseQuotient(full).maxCoeff());
    out.share_within += static_cast<double>((errors.array() <= modes.errors_hz.array()).count());
    out.mean_estimate += modes.errors_hz.cwiseQuotient(full).sum();
  }
  out.share_within /= num_points * num_modes;
  out.mean_estimate /= num_points * num_modes;
  return out;
}

/// An arched rectangle, 300 by 180 mm.
inline ShellMesh arched_rectangle(double thickness, bool with_bar = false, double height = 0.012)
{
  GridPlate grid = {.x = lines_with_strips(0.15, 6, 0.004),
                    .y = {-0.09, -0.086, -0.04, 0.01, 0.018, 0.05, 0.086, 0.09},
                    .surface = biparabolic(0.3, 0.18, height),
                    .thickness = thickness};
  if (with_bar)
    grid.under_bar = [](double x, double y) { return std::abs(x) < 0.11 && y > 0.01 && y < 0.018; };
  return grid_mesh(grid);
}

} // namespace plate::test
