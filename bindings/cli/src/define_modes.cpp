// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

namespace plate
{
namespace
{

struct TypedModes
{
  TypedCommon common;
  int count = ModesRequest().count;
};

} // namespace

CommandDefinition define_modes(CLI::App& plate)
{
  CLI::App* command =
      add_command(plate, "modes", "modes of a plate: frequencies, names, loss; pictures with --out",
                  command_group::plates, "plate modes examples/viola/spruce_top.toml --count 8 --out out/spruce");
  const auto typed = std::make_shared<TypedModes>();
  add_common_options(*command, typed->common);
  add_count(*command, typed->count);
  return {.app = command, .request = [command, typed]() -> Request {
            return ModesRequest{.common = common_options(*command, typed->common), .count = typed->count};
          }};
}

} // namespace plate
