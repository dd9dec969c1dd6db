// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "fits_report.h"
#include "interrupt.h"
#include "load_files.h"
#include "load_report.h"
#include "load_result.h"
#include "open_design.h"
#include "output_folder.h"
#include "progress.h"
#include "run_limits.h"

#include <iostream>
#include <optional>
#include <utility>

namespace plate
{
namespace
{

/// A design with its loads, checked before any work.
struct CheckedLoad
{
  Design design;
  LoadDesign load;
};

CheckedLoad checked_load(const DesignDocument& document)
{
  CheckedLoad checked = {.design = document.design(), .load = document.load()};
  check_run(document, checked.design, LoadSetup().num_modes, run_limits());
  std::cerr << outlier_warnings(checked.design.fits);
  return checked;
}

} // namespace

int run_command(const LoadRequest& request)
{
  const CommonOptions& options = request.common;
  CheckedLoad design = checked_load(open_design(options));
  std::optional<CheckedLoad> reference;
  if (!request.reference.empty())
  {
    CommonOptions other = options;
    other.file = request.reference;
    other.overrides.clear(); // --set is about the first file
    reference = checked_load(open_design(other));
  }
  LoadOutcome outcome{.design = compute_load(std::move(design.design), design.load, request.rim), .reference = {}};
  if (reference)
    outcome.reference = compute_load(std::move(reference->design), reference->load, request.rim);
  if (!options.out.empty())
  {
    const DeferredInterrupt deferred; // the files appear together or not at all
    Progress progress;
    progress.show("writing files and pictures");
    OutputFolder folder({.path = options.out});
    write_load_files(folder, outcome, options.timing);
    if (interrupted())
      return exit_interrupted;
    folder.publish();
  }
  std::cout << (options.json ? load_json(outcome, options.timing) : load_text(outcome, options.timing)) << std::flush;
  return exit_done;
}

} // namespace plate
