// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

#include <map>

namespace plate
{
namespace
{

struct TypedLoad
{
  TypedCommon common;
  std::string reference;
  EdgeSupport rim = {};
};

const std::map<std::string, EdgeSupport>& rims()
{
  static const std::map<std::string, EdgeSupport> words = {
      {"rest", EdgeSupport::rest}, {"hinged", EdgeSupport::hinged}, {"clamped", EdgeSupport::clamped}};
  return words;
}

} // namespace

CommandDefinition define_load(CLI::App& plate)
{
  CLI::App* command = add_command(
      plate, "load", "what strings and hands do to a plate or a whole body: deflection, margins of strength, buckling",
      command_group::plates,
      "plate load examples/viola/laminate_top.toml --reference examples/viola/spruce_top.toml --out out/load\n"
      "  plate load examples/viola/body/laminate_body.toml --reference examples/viola/body/wooden_body.toml");
  const auto typed = std::make_shared<TypedLoad>();
  add_common_options(*command, typed->common);
  command
      ->add_option(
          "--reference", typed->reference,
          "a design one trusts, a plate beside a plate, a body beside a body, loaded as its file says (--set acts "
          "on the first only): its margins stand beside, and their ratios")
      ->type_name("FILE");
  command
      ->add_option(
          "--rim", typed->rim,
          "how the rim holds a plate whose file leaves its edge free: rest, hinged or clamped (hinged); a body "
          "hangs free")
      ->type_name("WORD")
      ->transform(CLI::CheckedTransformer(rims()).description(""));
  return {.app = command,
          .request = [command, typed]() -> Request
          {
            if (command->count("--reference") > 0 && typed->reference.empty())
              throw UsageError("--reference: the name of a design file is missing");
            LoadRequest request = {
                .common = common_options(*command, typed->common), .reference = typed->reference, .rim = {}};
            if (command->count("--rim") > 0)
              request.rim = typed->rim;
            return request;
          }};
}

} // namespace plate
