// SPDX-License-Identifier: MPL-2.0
#include "checked_design.h"
#include "commands.h"
#include "compare_files.h"
#include "compare_report.h"
#include "compare_result.h"
#include "interrupt.h"
#include "open_design.h"
#include "output_folder.h"
#include "progress.h"

#include <plate/design/measured_modes.h>

#include <algorithm>
#include <iostream>
#include <utility>

namespace plate
{
namespace
{

std::vector<Design> checked_designs(const CompareRequest& request, int count)
{
  std::vector<Design> designs;
  for (const std::string& file : request.designs)
  {
    CommonOptions options = request.common;
    options.file = file;
    designs.push_back(checked_design(open_design(options), num_searched(count)));
  }
  return designs;
}

CompareOutcome compare(const CompareRequest& request)
{
  if (!request.measured.empty())
  {
    const MeasuredModes measured = read_measured_modes(request.measured);
    const int count = std::max(request.count, measured.modes.back().number);
    return compare_measured(measured, checked_designs(request, count), count);
  }
  CommonOptions reference = request.common;
  reference.overrides.clear(); // --set is about the designs
  Design design = checked_design(open_design(reference), request.count);
  return compare_designs(std::move(design), checked_designs(request, request.count), request.count);
}

/// False if interrupted.
bool write_files(const CommonOptions& options, const CompareOutcome& outcome)
{
  if (options.out.empty())
    return true;
  const DeferredInterrupt deferred; // the files appear together or not at all
  Progress progress;
  progress.show("writing files and pictures");
  OutputFolder folder({.path = options.out});
  write_compare_files(folder, outcome, options.timing);
  if (interrupted())
    return false;
  folder.publish();
  return true;
}

} // namespace

int run_command(const CompareRequest& request)
{
  const CommonOptions& options = request.common;
  const CompareOutcome outcome = compare(request);
  if (!write_files(options, outcome))
    return exit_interrupted;
  std::cout << (options.json ? compare_json(outcome, options.timing) : compare_text(outcome, options.timing))
            << std::flush;
  return exit_done;
}

} // namespace plate
