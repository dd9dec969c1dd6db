// SPDX-License-Identifier: MPL-2.0
#include "checked_body.h"
#include "checked_design.h"
#include "commands.h"
#include "compare_files.h"
#include "compare_report.h"
#include "compare_result.h"
#include "interrupt.h"
#include "open_design.h"
#include "output_folder.h"
#include "progress.h"

#include <plate/core/error.h>
#include <plate/design/measured_modes.h>

#include <algorithm>
#include <iostream>
#include <utility>

namespace plate
{
namespace
{

AnyDesign checked(const CommonOptions& options, int num_modes)
{
  if (is_body_file(options))
    return checked_body(open_body(options), num_modes);
  return checked_design(open_design(options), num_modes);
}

const char* kind_of(const AnyDesign& design)
{
  return std::holds_alternative<BodyDesign>(design) ? "a body" : "a plate";
}

/// The designs to compare, all of one kind, that of the reference if there is one.
///
/// @param reference  null where modes are measured
std::vector<AnyDesign> checked_designs(const CompareRequest& request, int count, const AnyDesign* reference)
{
  std::vector<AnyDesign> designs;
  for (const std::string& file : request.designs)
  {
    CommonOptions options = request.common;
    options.file = file;
    designs.push_back(checked(options, num_searched(count)));
    const AnyDesign& first = reference ? *reference : designs.front();
    if (designs.back().index() != first.index())
      throw UsageError(message(file, ": is ", kind_of(designs.back()), ", but ",
                               reference ? request.common.file : request.designs.front(), " is ", kind_of(first),
                               "; compare takes plates with plates or bodies with bodies, the files of whose plates "
                               "are named under [body]"));
  }
  return designs;
}

CompareOutcome compare(const CompareRequest& request)
{
  if (!request.measured.empty())
  {
    const MeasuredModes measured = read_measured_modes(request.measured);
    const int count = std::max(request.count, measured.modes.back().number);
    return compare_measured(measured, checked_designs(request, count, nullptr), count);
  }
  CommonOptions options = request.common;
  options.overrides.clear(); // --set is about the designs
  AnyDesign reference = checked(options, request.count);
  std::vector<AnyDesign> designs = checked_designs(request, request.count, &reference);
  return compare_designs(std::move(reference), std::move(designs), request.count);
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
