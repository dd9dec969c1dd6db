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
  std::string beside;
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
  command
      ->add_option("--beside", typed->beside,
                   "a second design, computed as its file says (--set acts on the first only): both tables, the "
                   "differences, and side_by_side.png and .svg with --out")
      ->type_name("FILE");
  return {.app = command,
          .request = [command, typed]() -> Request
          {
            if (command->count("--beside") > 0 && typed->beside.empty())
              throw UsageError("--beside: the name of a design file is missing");
            return ModesRequest{
                .common = common_options(*command, typed->common), .count = typed->count, .beside = typed->beside};
          }};
}

} // namespace plate
