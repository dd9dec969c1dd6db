// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "body_files.h"
#include "body_report.h"
#include "body_result.h"
#include "fits_report.h"
#include "interrupt.h"
#include "open_design.h"
#include "output_folder.h"
#include "progress.h"
#include "run_limits.h"

#include <plate/core/error.h>
#include <plate/design/design_error.h>

#include <iostream>
#include <optional>
#include <utility>

namespace plate
{
namespace
{

/// A body that can be computed: its air leaves through the top alone, and the run fits the machine.
BodyDesign checked_body(const BodyDocument& document, int num_modes)
{
  BodyDesign design = document.design();
  if (const std::size_t holes = design.back.geometry.soundholes.size(); holes > 0)
    throw DesignError(message(document.place("body.back"), ": the back has ", holes,
                              " entries of [[soundhole]]; air leaves a body through the top alone: leave them out"));
  check_run(document, design, num_modes, run_limits());
  std::cerr << outlier_warnings(design.top.fits) << outlier_warnings(design.back.fits);
  return design;
}

} // namespace

int run_command(const BodyRequest& request)
{
  const CommonOptions& options = request.common;
  BodyDesign design = checked_body(open_body(options), request.count);
  std::optional<BodyDesign> reference;
  if (!request.reference.empty())
  {
    CommonOptions other = options;
    other.file = request.reference;
    other.overrides.clear(); // --set is about the first file
    reference = checked_body(open_body(other), request.count);
  }
  BodyOutcome outcome{.body = compute_body(std::move(design), request.count)};
  if (reference)
    outcome.reference = compute_body(std::move(*reference), request.count);
  if (!options.out.empty())
  {
    const DeferredInterrupt deferred; // the files appear together or not at all
    Progress progress;
    progress.show("writing files and pictures");
    OutputFolder folder({.path = options.out});
    write_body_files(folder, outcome, options.timing);
    if (interrupted())
      return exit_interrupted;
    folder.publish();
  }
  std::cout << (options.json ? body_json(outcome, options.timing) : body_text(outcome, options.timing)) << std::flush;
  return exit_done;
}

} // namespace plate
