// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

namespace plate
{

CommandDefinition define_laminate(CLI::App& plate)
{
  CLI::App* command = add_command(
      plate, "laminate", "constants of the layup: A, B, D, shear, moduli, expansion, stiffness by direction",
      command_group::plates, "plate laminate examples/viola/laminate_top.toml --out out/layup");
  const auto typed = std::make_shared<TypedCommon>();
  add_common_options(*command, *typed);
  return {.app = command,
          .request = [command, typed]() -> Request { return LaminateRequest{common_options(*command, *typed)}; }};
}

} // namespace plate
