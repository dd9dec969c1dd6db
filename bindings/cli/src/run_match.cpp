// SPDX-License-Identifier: MPL-2.0
#include "checked_design.h"
#include "commands.h"
#include "interrupt.h"
#include "match_files.h"
#include "match_report.h"
#include "match_result.h"
#include "match_words.h"
#include "output_folder.h"
#include "progress.h"
#include "stopwatch.h"

#include <iostream>
#include <optional>
#include <utility>

namespace plate
{
namespace
{

constexpr int exit_nothing_fits = 1;

MatchProblem open_problem(const CommonOptions& options)
{
  MatchProblem problem =
      read_match_problem(options.file, {.folder = {}, .allow_outside = options.allow_outside}, options.overrides);
  if (!options.out.empty())
    check_output_folder({.path = options.out});
  static_cast<void>(checked_design(problem.start, num_searched(problem.wanted.count)));
  return problem;
}

} // namespace

int run_command(const MatchRequest& request)
{
  const CommonOptions& options = request.common;
  const Stopwatch watch;
  MatchProblem problem = open_problem(options);
  std::optional<DeferredInterrupt> deferred; // the best so far are given, from the first stage on
  Progress progress;
  const MatchOutcome outcome =
      compute_match(std::move(problem), request.seed,
                    [&](const std::string& stage)
                    {
                      if (!deferred)
                        deferred.emplace();
                      progress.show(stage);
                      return !interrupted() && (request.seconds == 0.0 || watch.seconds() < request.seconds);
                    });
  if (!options.out.empty())
  {
    progress.show("writing files and pictures");
    OutputFolder folder({.path = options.out});
    write_match_files(folder, outcome, options.timing);
    folder.publish();
  }
  if (outcome.result.candidates.empty())
    std::cerr << "plate match: " << nothing_found_words(outcome) << '\n';
  std::cout << (options.json ? match_json(outcome, options.timing) : match_text(outcome, options.timing)) << std::flush;
  if (interrupted())
    return exit_interrupted;
  return outcome.result.fits && !outcome.result.candidates.empty() ? exit_done : exit_nothing_fits;
}

} // namespace plate
