// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

namespace plate
{
namespace
{

struct TypedBody
{
  TypedCommon common;
  int count = BodyRequest().count;
};

} // namespace

CommandDefinition define_body(CLI::App& plate)
{
  CLI::App* command = add_command(
      plate, "body", "modes of a closed body with the air in it, and the mobility at the bridge", command_group::bodies,
      "plate body examples/viola/body/laminate_body.toml --set top.layup.scale=1.1 --out out/body");
  const auto typed = std::make_shared<TypedBody>();
  add_common_options(*command, typed->common);
  add_count(*command, typed->count);
  return {.app = command, .request = [command, typed]() -> Request {
            return BodyRequest{.common = common_options(*command, typed->common), .count = typed->count};
          }};
}

} // namespace plate
