// SPDX-License-Identifier: MPL-2.0
#include "commands.h"
#include "laminate_files.h"
#include "laminate_report.h"
#include "laminate_result.h"
#include "open_design.h"
#include "output_folder.h"
#include "stopwatch.h"

#include <plate/design/design.h>

#include <iostream>

namespace plate
{

int run_command(const LaminateRequest& request)
{
  const CommonOptions& options = request.common;
  const LayupDesign design = open_design(options).layup();
  const Stopwatch watch;
  LaminateResult result = compute_laminate(design);
  if (options.timing)
    result.seconds = watch.seconds();
  if (!options.out.empty())
  {
    OutputFolder folder({.path = options.out});
    write_laminate_files(folder, result);
    folder.publish();
  }
  std::cout << (options.json ? laminate_json(result) : laminate_text(result)) << std::flush;
  return exit_done;
}

} // namespace plate
