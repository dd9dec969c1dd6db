// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "interrupt.h"
#include "open_design.h"
#include "output_folder.h"
#include "progress.h"
#include "sensitivity_report.h"
#include "sensitivity_result.h"

#include <iostream>
#include <optional>

namespace plate
{
namespace
{

/// @param deferred  is set when the first key begins: then there will be results to give after an interrupt
SensitivityOutcome computed(const SensitivityRequest& request, std::optional<DeferredInterrupt>& deferred)
{
  Progress progress;
  progress.show("modes");
  const auto begin_key = [&](std::size_t key, std::size_t num_keys)
  {
    if (!deferred)
      deferred.emplace();
    progress.show(message("key ", key + 1, " of ", num_keys));
    return !interrupted();
  };
  if (is_body_file(request.common))
    return compute_sensitivity(open_body(request.common), request, begin_key);
  return compute_sensitivity(open_design(request.common), request, begin_key);
}

} // namespace

int run_command(const SensitivityRequest& request)
{
  const CommonOptions& options = request.common;
  std::optional<DeferredInterrupt> deferred; // results so far are given, from the first key on
  const SensitivityOutcome outcome = computed(request, deferred);
  if (!options.out.empty())
  {
    Progress progress;
    progress.show("writing files and pictures");
    OutputFolder folder({.path = options.out});
    write_sensitivity_files(folder, outcome, options.timing);
    folder.publish();
  }
  std::cout << (options.json ? sensitivity_json(outcome, options.timing) : sensitivity_text(outcome, options.timing))
            << std::flush;
  return outcome.complete ? exit_done : exit_interrupted;
}

} // namespace plate
