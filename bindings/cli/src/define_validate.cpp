// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

namespace plate
{

CommandDefinition define_validate(CLI::App& plate)
{
  CLI::App* command = add_command(plate, "validate", "every case with a known answer beside what this program computes",
                                  command_group::trust, "plate validate --only spruce");
  const auto typed = std::make_shared<ValidateRequest>();
  add_json(*command, typed->json);
  add_threads(*command, typed->common.threads);
  command->add_flag("--list", typed->list, "name the cases with their sources, compute nothing");
  command->add_option("--only", typed->only, "cases with PATTERN in their name, topic or source; * stands for anything")
      ->type_name("PATTERN");
  command->add_flag("--values", typed->values, "a line for each value instead of the worst of each case");
  return {.app = command,
          .request = [command, typed]() -> Request
          {
            if (command->count("--only") > 0 && typed->only.empty())
              throw UsageError("--only: the pattern is missing, e.g. --only spruce");
            return *typed;
          }};
}

} // namespace plate
