// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "checked_design.h"
#include "interrupt.h"
#include "matrix_files.h"
#include "modes_files.h"
#include "modes_report.h"
#include "modes_result.h"
#include "open_design.h"
#include "output_folder.h"
#include "progress.h"
#include "refine.h"
#include "run_limits.h"

#include <plate/core/units.h>
#include <plate/design/design.h>

#include <algorithm>
#include <iostream>
#include <optional>
#include <utility>

namespace plate
{
namespace
{

NamedFolder matrix_folder(const ModesRequest& request)
{
  return {.path = request.matrices, .option = "--matrices"};
}

ModesResult modes_of(Design design, const ModesRequest& request)
{
  if (request.accuracy > 0.0)
  {
    RunLimits limits = run_limits();
    limits.unknowns = std::min(limits.unknowns, static_cast<double>(request.most_unknowns));
    return refine_modes(design, request.count, request.accuracy / percent, limits);
  }
  return compute_modes(std::move(design), request.count);
}

/// Writes what was asked for; false if interrupted.
bool write_files(const ModesRequest& request, const ModesOutcome& outcome)
{
  const CommonOptions& options = request.common;
  if (options.out.empty() && request.matrices.empty())
    return true;
  const DeferredInterrupt deferred; // the files appear together or not at all
  Progress progress;
  progress.show("writing files and pictures");
  std::optional<OutputFolder> results;
  std::optional<OutputFolder> matrices;
  if (!options.out.empty())
    write_modes_files(results.emplace(NamedFolder{.path = options.out}), outcome, options.timing);
  if (!request.matrices.empty())
    write_matrix_files(matrices.emplace(matrix_folder(request)), outcome.design);
  if (interrupted())
    return false;
  for (std::optional<OutputFolder>* folder : {&results, &matrices})
    if (*folder)
      (*folder)->publish();
  return true;
}

} // namespace

int run_command(const ModesRequest& request)
{
  const CommonOptions& options = request.common;
  if (!request.matrices.empty())
    check_output_folder(matrix_folder(request));
  Design design = checked_design(open_design(options), request.count);
  std::optional<Design> beside;
  if (!request.beside.empty())
    beside = checked_design(open_design(options_for(options, request.beside)), request.count);
  ModesOutcome outcome{.design = modes_of(std::move(design), request), .beside = {}};
  if (beside)
    outcome.beside = modes_of(std::move(*beside), request);
  if (!write_files(request, outcome))
    return exit_interrupted;
  std::cout << (options.json ? modes_json(outcome, options.timing) : modes_text(outcome, options.timing)) << std::flush;
  const bool accurate = outcome.design.accurate && (!outcome.beside || outcome.beside->accurate);
  return accurate ? exit_done : exit_not_reached;
}

} // namespace plate
