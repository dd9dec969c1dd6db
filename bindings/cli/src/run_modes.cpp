// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "fits_report.h"
#include "interrupt.h"
#include "modes_files.h"
#include "modes_report.h"
#include "modes_result.h"
#include "open_design.h"
#include "output_folder.h"
#include "progress.h"
#include "run_limits.h"

#include <plate/design/design.h>

#include <iostream>
#include <utility>

namespace plate
{

int run_command(const ModesRequest& request)
{
  const CommonOptions& options = request.common;
  const DesignDocument document = open_design(options);
  Design design = document.design();
  check_run(document, design, request.count, run_limits());
  std::cerr << outlier_warnings(design.fits);
  const ModesResult result = compute_modes(std::move(design), request.count);
  if (!options.out.empty())
  {
    const DeferredInterrupt deferred; // the files appear together or not at all
    Progress progress;
    progress.show("writing files and pictures");
    OutputFolder folder(options.out);
    write_modes_files(folder, result, options.timing);
    if (interrupted())
      return exit_interrupted;
    folder.publish();
  }
  std::cout << (options.json ? modes_json(result, options.timing) : modes_text(result, options.timing)) << std::flush;
  return exit_done;
}

} // namespace plate
