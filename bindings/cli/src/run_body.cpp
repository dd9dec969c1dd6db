// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "body_files.h"
#include "body_report.h"
#include "body_result.h"
#include "checked_body.h"
#include "interrupt.h"
#include "open_design.h"
#include "output_folder.h"
#include "progress.h"

#include <iostream>
#include <optional>
#include <utility>

namespace plate
{

int run_command(const BodyRequest& request)
{
  const CommonOptions& options = request.common;
  BodyDesign design = checked_body(open_body(options), request.count);
  std::optional<BodyDesign> reference;
  if (!request.reference.empty())
    reference = checked_body(open_body(options_for(options, request.reference)), request.count);
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
