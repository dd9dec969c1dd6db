// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

#include <cmath>
#include <cstddef>

namespace plate
{
namespace
{

constexpr int most_steps = 1000; // a slip of the pen, not a sweep

struct TypedSweep
{
  TypedCommon common;
  int count = SweepRequest().count;
  std::vector<std::string> keys;
  std::vector<double> from;
  std::vector<double> to;
  std::vector<int> steps;
  bool full = false;
};

std::vector<SweptKey> swept_keys(const TypedSweep& typed)
{
  const std::size_t count = typed.keys.size();
  if (count < 1 || count > 2)
    throw UsageError(message("plate sweep: one or two keys can be swept, got ", count,
                             "; give --key KEY --from A --to B "
                             "--steps N for each"));
  if (typed.from.size() != count || typed.to.size() != count || typed.steps.size() != count)
    throw UsageError(message("plate sweep: each --key needs one --from, one --to and one --steps; got ", count,
                             " --key, ", typed.from.size(), " --from, ", typed.to.size(), " --to, ", typed.steps.size(),
                             " --steps"));
  std::vector<SweptKey> keys;
  for (std::size_t i = 0; i < count; ++i)
  {
    if (!(typed.from[i] < typed.to[i]) || !std::isfinite(typed.to[i] - typed.from[i]))
      throw UsageError(message("plate sweep: --from must be less than --to; got ", typed.from[i], " and ", typed.to[i],
                               " for ", typed.keys[i]));
    keys.push_back({typed.keys[i], typed.from[i], typed.to[i], typed.steps[i]});
  }
  if (count == 2 && keys[0].key == keys[1].key)
    throw UsageError(message("plate sweep: the two keys must differ; got ", keys[0].key, " twice"));
  return keys;
}

void add_sweep_options(CLI::App& command, TypedSweep& typed)
{
  add_common_options(command, typed.common);
  add_count(command, typed.count);
  add_repeatable(
      command, "--key", typed.keys,
      "key to change, of a body's plates as top.KEY or back.KEY; give --key, --from, --to, --steps twice for two keys")
      ->type_name("KEY");
  add_repeatable(command, "--from", typed.from, "first value, in the unit of the key")->type_name("A");
  add_repeatable(command, "--to", typed.to, "last value")->type_name("B");
  add_repeatable(command, "--steps", typed.steps, "number of values, both ends included")
      ->type_name("N")
      ->check(CLI::Range(2, most_steps));
  command.add_flag(
      "--full", typed.full,
      "solve each point in full; else many points on one mesh come from a reduced model, within 0.002 % of "
      "a full solve");
}

} // namespace

CommandDefinition define_sweep(CLI::App& plate)
{
  CLI::App* command =
      add_command(plate, "sweep", "modes of a plate or a body over a range of one or two keys, followed by their shape",
                  command_group::studies,
                  "plate sweep examples/viola/laminate_top.toml --key layup.scale --from 0.7 --to 1.3 "
                  "--steps 7 --out out/sweep");
  const auto typed = std::make_shared<TypedSweep>();
  add_sweep_options(*command, *typed);
  return {.app = command,
          .request = [command, typed]() -> Request
          {
            return SweepRequest{.common = common_options(*command, typed->common),
                                .keys = swept_keys(*typed),
                                .count = typed->count,
                                .full = typed->full};
          }};
}

} // namespace plate
