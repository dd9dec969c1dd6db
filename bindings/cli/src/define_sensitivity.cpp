// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

#include <algorithm>

namespace plate
{
namespace
{

struct TypedSensitivity
{
  TypedCommon common;
  int count = SensitivityRequest().count;
  std::vector<std::string> keys;
  std::vector<std::string> maps;
  std::string leave;
};

void check(const CLI::App& command, const TypedSensitivity& typed)
{
  for (const std::string& key : typed.keys)
    if (std::count(typed.keys.begin(), typed.keys.end(), key) > 1)
      throw UsageError(message("plate sensitivity: --key ", key, " is given twice; once is enough"));
  if (command.count("--leave") > 0 && typed.leave.empty())
    throw UsageError("--leave: the name or number of a mode is missing, e.g. --leave M2");
  if ((!typed.maps.empty() || !typed.leave.empty()) && typed.common.common.out.empty())
    throw UsageError("plate sensitivity: --map and --leave are about pictures; say where to with --out DIR");
}

} // namespace

CommandDefinition define_sensitivity(CLI::App& plate)
{
  CLI::App* command = add_command(
      plate, "sensitivity", "what each key of a plate or body does to each mode, and where thickness counts",
      command_group::studies,
      "plate sensitivity examples/viola/laminate_top.toml --count 8 --map M5 --leave M2 --out out/sensitivity");
  const auto typed = std::make_shared<TypedSensitivity>();
  add_common_options(*command, typed->common);
  add_count(*command, typed->count);
  add_repeatable(
      *command, "--key", typed->keys,
      "a key to change, may be given several times, e.g. top.layup.scale of a body; without it all numeric keys of "
      "the file that change the modes")
      ->type_name("KEY");
  add_repeatable(*command, "--map", typed->maps,
                 "a mode, by name or number, for which a map is drawn of what thickness does where, may be given "
                 "several times; without it M1, M2 and M5, of a body A0, A1, CBR, B1- and B1+, or else mode 1")
      ->type_name("MODE");
  command
      ->add_option("--leave", typed->leave,
                   "a mode that is to stay: the maps get lines along which thickness leaves it alone")
      ->type_name("MODE");
  return {.app = command,
          .request = [command, typed]() -> Request
          {
            check(*command, *typed);
            return SensitivityRequest{.common = common_options(*command, typed->common),
                                      .keys = typed->keys,
                                      .count = typed->count,
                                      .maps = typed->maps,
                                      .leave = typed->leave};
          }};
}

} // namespace plate
