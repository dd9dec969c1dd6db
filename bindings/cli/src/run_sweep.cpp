// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "fits_report.h"
#include "interrupt.h"
#include "open_design.h"
#include "output_folder.h"
#include "progress.h"
#include "run_limits.h"
#include "stopwatch.h"
#include "sweep_bodies.h"
#include "sweep_report.h"

#include <plate/design/body_design.h>
#include <plate/design/design.h>
#include <plate/design/design_model.h>

#include <cstddef>
#include <iostream>
#include <optional>

namespace plate
{
namespace
{

constexpr std::size_t most_points = 10000;
constexpr double reduced_tolerance = 2e-5; // a fiftieth of a hertz at 1000 Hz, a tenth of the mesh's error

/// All points of the grid, the last key running fastest.
std::vector<std::vector<double>> grid(const std::vector<SweptKey>& keys)
{
  std::vector<std::vector<double>> points = {{}};
  for (const SweptKey& key : keys)
  {
    std::vector<std::vector<double>> longer;
    for (const std::vector<double>& point : points)
      for (int step = 0; step < key.steps; ++step)
      {
        longer.push_back(point);
        const double share = static_cast<double>(step) / (key.steps - 1);
        longer.back().push_back(step == key.steps - 1 ? key.to : key.from + share * (key.to - key.from));
      }
    points = std::move(longer);
  }
  return points;
}

/// The ends of the ranges must be designs: better said now than after an hour.
template <class Document>
void check_ends(const Document& document, const std::vector<SweptKey>& keys, int num_modes)
{
  for (const double SweptKey::*end : {&SweptKey::from, &SweptKey::to})
  {
    Document changed = document;
    for (const SweptKey& key : keys)
      changed.set_number(key.key, key.*end);
    check_run(changed, changed.design(), num_modes, run_limits());
  }
}

/// A sweep over a grid of keys that is still to be computed; the ends are checked.
template <class Document>
SweepOutcome prepared(const SweepRequest& request, const Document& document, const std::string& title)
{
  SweepOutcome out{.title = title,
                   .keys = {},
                   .units = {},
                   .points = grid(request.keys),
                   .row = static_cast<std::size_t>(request.keys.back().steps),
                   .result = {}};
  if (out.points.size() > most_points)
    throw UsageError(message("plate sweep: ", out.points.size(), " points; at most ", most_points, " are allowed"));
  for (const SweptKey& key : request.keys)
  {
    out.keys.push_back(key.key);
    out.units.push_back(document.unit(key.key));
  }
  check_ends(document, request.keys, request.count);
  return out;
}

/// @param deferred  is set when the first point begins: then there will be results to give after an interrupt
SweepOptions options_of(const SweepRequest& request, Progress& progress, std::optional<DeferredInterrupt>& deferred)
{
  SweepOptions options;
  options.num_modes = request.count;
  options.progress = [&](std::size_t point, std::size_t num_points)
  {
    if (!deferred)
      deferred.emplace();
    progress.show(message("point ", point + 1, " of ", num_points));
    return !interrupted();
  };
  return options;
}

SweepOutcome sweep_plate(const SweepRequest& request, std::optional<DeferredInterrupt>& deferred)
{
  const DesignDocument document = open_design(request.common);
  const Design first = document.design();
  std::cerr << outlier_warnings(first.fits);
  SweepOutcome out = prepared(request, document, first.title);
  out.in_air = first.surroundings.air_density > 0.0;
  DesignModel design(document, out.keys);
  Progress progress;
  SweepOptions options = options_of(request, progress, deferred);
  if (design.keeps_mesh() && !request.full)
    options.reduced_tolerance = reduced_tolerance;
  if (options.reduced_tolerance > 0.0 && reduced_model_pays(out.points.size(), out.keys.size()))
    progress.show("full solves for a reduced model");
  out.result = sweep(design, out.points, out.row, options);
  out.num_remeshed = design.num_remeshed();
  return out;
}

SweepOutcome sweep_body(const SweepRequest& request, std::optional<DeferredInterrupt>& deferred)
{
  const BodyDocument document = open_body(request.common);
  const BodyDesign first = document.design();
  SweepOutcome out = prepared(request, document, first.title);
  out.in_air = true;
  Progress progress;
  out.result = sweep_bodies(document, out.keys, out.points, out.row, options_of(request, progress, deferred));
  return out;
}

SweepOutcome compute_sweep(const SweepRequest& request, std::optional<DeferredInterrupt>& deferred)
{
  const Stopwatch whole;
  SweepOutcome out = is_body_file(request.common) ? sweep_body(request, deferred) : sweep_plate(request, deferred);
  out.seconds = whole.seconds();
  return out;
}

} // namespace

int run_command(const SweepRequest& request)
{
  const CommonOptions& options = request.common;
  std::optional<DeferredInterrupt> deferred; // results so far are given, from the first point on
  const SweepOutcome outcome = compute_sweep(request, deferred);
  if (outcome.num_remeshed > 0)
    std::cerr << "warning: the mesh could not be moved to " << outcome.num_remeshed
              << " points and was made anew there; expect steps of the size of the discretisation error\n";
  if (outcome.result.mass.empty())
    return exit_interrupted;
  if (!options.out.empty())
  {
    Progress progress;
    progress.show("writing files and pictures");
    OutputFolder folder({.path = options.out});
    write_sweep_files(folder, outcome, options.timing);
    folder.publish();
  }
  std::cout << (options.json ? sweep_json(outcome, options.timing) : sweep_text(outcome, options.timing)) << std::flush;
  return outcome.result.complete ? exit_done : exit_interrupted;
}

} // namespace plate
