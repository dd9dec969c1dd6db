// SPDX-License-Identifier: MPL-2.0
#include "commands.h"

#include "interrupt.h"
#include "progress.h"
#include "select_cases.h"
#include "validate_report.h"

#include <algorithm>
#include <iostream>

#include <unistd.h>

namespace plate
{
namespace
{

/// Ends early on an interrupt, with the results so far.
std::vector<validation::CaseResult> run_cases(const std::vector<const validation::ReferenceCase*>& cases)
{
  std::vector<validation::CaseResult> results;
  Progress progress;
  for (const validation::ReferenceCase* entry : cases)
  {
    if (interrupted())
      break;
    progress.show(message(results.size() + 1, " of ", cases.size(), ": ", entry->name));
    results.push_back(validation::run_case(*entry));
  }
  return results;
}

} // namespace

int run_command(const ValidateRequest& request)
{
  const std::vector<const validation::ReferenceCase*> cases = select_cases(request.only);
  if (request.list)
  {
    std::cout << (request.json ? case_list_json(cases) : case_list_text(cases)) << std::flush;
    return exit_done;
  }
  const DeferredInterrupt deferred;
  const std::vector<validation::CaseResult> results = run_cases(cases);
  const ValidateStyle style = {.values = request.values, .coloured = ::isatty(STDOUT_FILENO) == 1};
  std::cout << (request.json ? validate_json(results) : validate_text(results, style)) << std::flush;
  if (results.size() < cases.size())
    return exit_interrupted;
  return std::all_of(results.begin(), results.end(), validation::passed) ? exit_done : exit_numerics_failed;
}

} // namespace plate
