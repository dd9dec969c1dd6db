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
  std::string reference;
  int count = BodyRequest().count;
};

} // namespace

CommandDefinition define_body(CLI::App& plate)
{
  CLI::App* command = add_command(
      plate, "body", "modes of a closed body with the air in it, and the mobility at the bridge", command_group::bodies,
      "plate body examples/viola/body/laminate_body.toml --reference examples/viola/body/wooden_body.toml --out "
      "out/body");
  const auto typed = std::make_shared<TypedBody>();
  add_common_options(*command, typed->common);
  command
      ->add_option("--reference", typed->reference,
                   "a body one knows, computed as its file says (--set acts on the first only): modes paired by shape, "
                   "mobility and sound of both")
      ->type_name("FILE");
  add_count(*command, typed->count);
  return {.app = command,
          .request = [command, typed]() -> Request
          {
            if (command->count("--reference") > 0 && typed->reference.empty())
              throw UsageError("--reference: the name of a body's file is missing");
            return BodyRequest{.common = common_options(*command, typed->common),
                               .reference = typed->reference,
                               .count = typed->count};
          }};
}

} // namespace plate
