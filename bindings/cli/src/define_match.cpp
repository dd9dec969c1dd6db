// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

namespace plate
{
namespace
{

struct TypedMatch
{
  TypedCommon common;
  std::uint64_t seed = MatchRequest().seed;
  double seconds = MatchRequest().seconds;
};

} // namespace

CommandDefinition define_match(CLI::App& plate)
{
  CLI::App* command = add_command(
      plate, "match",
      "laminates that behave like a reference design or measured modes: a search over what the workshop has",
      command_group::studies, "plate match examples/viola/match.toml --threads 2 --out out/match");
  const auto typed = std::make_shared<TypedMatch>();
  add_common_options(*command, typed->common);
  command->get_option("FILE")->description(
      "match problem: reference, start design, [available], [wanted], [free]; --set acts on the start design");
  command->add_option("--seed", typed->seed, "start of what is drawn at random (1)")->type_name("N");
  command
      ->add_option("--time", typed->seconds,
                   "seconds after which the best so far are given; results repeat where it is not reached")
      ->type_name("S")
      ->check(CLI::PositiveNumber);
  return {.app = command,
          .request = [command, typed]() -> Request
          {
            return MatchRequest{
                .common = common_options(*command, typed->common), .seed = typed->seed, .seconds = typed->seconds};
          }};
}

} // namespace plate
