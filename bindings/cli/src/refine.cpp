// SPDX-License-Identifier: MPL-2.0
#include "refine.h"

#include <plate/laminates/laminate.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace plate
{
namespace
{

constexpr double first_order =
    3.0; // of the bars in the size, before it is observed: between smooth and cornered plates
constexpr double least_order = 1.0; // a lower one is noise between two meshes
constexpr double greatest_order = 6.0;
constexpr double aim = 0.8;          // of the accuracy: lands below it
constexpr double least_factor = 0.4; // on the size, in one step: orders are not known well enough for more
constexpr double greatest_factor = 0.85;
constexpr double growth = 1.05; // of the size, while the mesh is too large
constexpr double margin = 0.95; // of the allowed unknowns: what a mesh will have is known to a few percent

RefinementStep step_of(const ModesResult& result)
{
  return {.size = result.size,
          .unknowns = result.system.dofs.num_equations,
          .greatest_error = result.errors_hz.cwiseQuotient(result.modal.frequencies_hz).maxCoeff()};
}

/// Order at which the bars fell from the last mesh but one to the last.
double observed_order(const std::vector<RefinementStep>& steps)
{
  if (steps.size() < 2)
    return first_order;
  const RefinementStep& coarse = steps[steps.size() - 2];
  const RefinementStep& fine = steps.back();
  const double order = std::log(coarse.greatest_error / fine.greatest_error) / std::log(coarse.size / fine.size);
  return std::clamp(order, least_order, greatest_order);
}

double next_size(const std::vector<RefinementStep>& steps, double accuracy)
{
  const RefinementStep& last = steps.back();
  const double factor = std::pow(aim * accuracy / last.greatest_error, 1.0 / observed_order(steps));
  return last.size * std::clamp(factor, least_factor, greatest_factor);
}

/// A finer mesh of the same design. The strips along free edges shrink with it: the error there must fall, too.
Design with_size(Design design, double size, double strip_share)
{
  constexpr double strip_thicknesses = 1.2; // the default of MeshOptions
  design.mesh.size = size;
  design.mesh.strip_width = strip_share * strip_thicknesses * total_thickness(design.laminate);
  return design;
}

/// The design on a mesh of the wanted size, or of the least larger one that fits; nothing if that is hardly finer.
std::optional<Design> finer_design(const Design& design, const ModesResult& last, double wanted, double first_size,
                                   int count, RunLimits limits)
{
  const auto at = [&](double size) { return with_size(design, size, size / first_size); };
  // What is expected is held against the last mesh.
  const double expected = expected_unknowns(at(last.size));
  limits.unknowns *= margin * expected / static_cast<double>(last.system.dofs.num_equations);
  for (double size = wanted; size < greatest_factor * growth * last.size; size *= growth)
    if (Design finer = at(size); fits_limits(finer, count, limits))
      return finer;
  return {};
}

} // namespace

ModesResult refine_modes(const Design& design, int count, double accuracy, const RunLimits& limits)
{
  ModesResult result = compute_modes(design, count);
  std::vector<RefinementStep> steps = {step_of(result)};
  const double first_size = result.size;
  while (steps.back().greatest_error > accuracy)
  {
    std::optional<Design> finer = finer_design(design, result, next_size(steps, accuracy), first_size, count, limits);
    if (!finer)
      break;
    result = compute_modes(std::move(*finer), count);
    steps.push_back(step_of(result));
  }
  result.accurate = steps.back().greatest_error <= accuracy;
  result.refinement = std::move(steps);
  return result;
}

} // namespace plate
