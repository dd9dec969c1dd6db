// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "body_load_files.h"
#include "body_load_report.h"
#include "body_load_result.h"
#include "checked_body.h"
#include "fits_report.h"
#include "interrupt.h"
#include "load_files.h"
#include "load_report.h"
#include "load_result.h"
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

LoadOutcome plate_outcome(const LoadRequest& request)
{
  CheckedLoad design = checked_load(open_design(request.common));
  std::optional<CheckedLoad> reference;
  if (!request.reference.empty())
    reference = checked_load(open_design(options_for(request.common, request.reference)));
  LoadOutcome outcome{.design =
                          compute_load(std::move(design.design), design.load, request.rim.value_or(LoadSetup().rim)),
                      .reference = {}};
  if (reference)
    outcome.reference =
        compute_load(std::move(reference->design), reference->load, request.rim.value_or(LoadSetup().rim));
  return outcome;
}

/// A body with its loads, checked before any work.
struct CheckedBodyLoad
{
  BodyDesign design;
  BodyLoadDesign load;
};

CheckedBodyLoad checked_load(const BodyDocument& document)
{
  CheckedBodyLoad checked = {.design = checked_body(document, BodyLoadSetup().num_modes), .load = document.load()};
  if (checked.design.blocks.end.x() == 0.0)
    throw DesignError(message(document.place("blocks.end"),
                              ": the strings pull at the blocks at both ends; give them a width greater than 0"));
  return checked;
}

BodyLoadOutcome body_outcome(const LoadRequest& request)
{
  CheckedBodyLoad design = checked_load(open_body(request.common));
  std::optional<CheckedBodyLoad> reference;
  if (!request.reference.empty())
    reference = checked_load(open_body(options_for(request.common, request.reference)));
  BodyLoadOutcome outcome{.design = compute_load(std::move(design.design), design.load), .reference = {}};
  if (reference)
    outcome.reference = compute_load(std::move(reference->design), reference->load);
  return outcome;
}

/// A plate is compared with a plate, a body with a body; --rim is about plates.
void check_kinds(const LoadRequest& request, bool is_body)
{
  const auto kind = [](bool body) { return body ? "a body" : "a plate"; };
  if (!request.reference.empty() && is_body_file(options_for(request.common, request.reference)) != is_body)
    throw UsageError(message("--reference ", request.reference, ": is the file of ", kind(!is_body), ", and ",
                             request.common.file, " that of ", kind(is_body), "; give ", kind(is_body)));
  if (is_body && request.rim)
    throw UsageError(message("--rim: holds the rim of a plate, and ", request.common.file,
                             " is the file of a body, which hangs free; leave it out"));
}

/// Writes the files that are asked for and prints the results; the exit status.
template <class Outcome>
int give(const CommonOptions& options, const Outcome& outcome)
{
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

} // namespace

int run_command(const LoadRequest& request)
{
  const bool is_body = is_body_file(request.common);
  check_kinds(request, is_body);
  return is_body ? give(request.common, body_outcome(request)) : give(request.common, plate_outcome(request));
}

} // namespace plate
