// SPDX-License-Identifier: MPL-2.0
#include "commands.h"
#include "laminate_report.h"
#include "laminate_result.h"
#include "open_design.h"
#include "output_folder.h"

#include <plate/design/design.h>

#include <iostream>

namespace plate
{

int run_command(const LaminateRequest& request)
{
  const CommonOptions& options = request.common;
  const LaminateResult result = compute_laminate(open_design(options).layup());
  const std::string json = laminate_json(result);
  if (!options.out.empty())
  {
    OutputFolder folder(options.out);
    folder.write("laminate.json", json);
    folder.write("polar.csv", polar_csv(result));
    folder.publish();
  }
  std::cout << (options.json ? json : laminate_text(result)) << std::flush;
  return exit_done;
}

} // namespace plate
