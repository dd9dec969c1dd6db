// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

#include <utility>

namespace plate
{
namespace
{

struct TypedCompare
{
  TypedCommon common;
  std::vector<std::string> designs;
  std::string measured;
  int count = CompareRequest().count;
};

CompareRequest compare_request(const CLI::App& command, const TypedCompare& typed)
{
  CompareRequest request{.common = common_options(command, typed.common),
                         .designs = typed.designs,
                         .measured = typed.measured,
                         .count = typed.count};
  if (command.count("--measured") > 0)
  {
    if (typed.measured.empty())
      throw UsageError("--measured: the name of a file is missing");
    request.designs.insert(request.designs.begin(), request.common.file);
  }
  else if (typed.designs.empty())
    throw UsageError("plate compare: a design to compare with the reference is missing; give its file after that of "
                     "the reference, or measured modes with --measured");
  return request;
}

} // namespace

CommandDefinition define_compare(CLI::App& plate)
{
  CLI::App* command = add_command(
      plate, "compare",
      "modes of plates or bodies beside those of a reference or beside measured ones, paired by shape: cents, loss, "
      "mass; pictures with --out",
      command_group::studies,
      "plate compare examples/viola/spruce_top.toml examples/viola/laminate_top.toml --out out/compare");
  const auto typed = std::make_shared<TypedCompare>();
  add_common_options(*command, typed->common);
  command->get_option("FILE")->description(
      "design file of the reference, a plate or a body; with --measured, of the first design");
  command->add_option(
      "DESIGN", typed->designs,
      "design files to compare with the first, which is the reference: plates with a plate, bodies with "
      "a body; --set acts on these, not on the reference");
  command
      ->add_option("--measured", typed->measured,
                   "measured modes to take for the reference; all FILEs are then designs. CSV with the columns mode, "
                   "name, frequency_hz, loss_percent, or TOML with tables [[mode]] of number, name, frequency_hz, "
                   "loss_percent and, for pairing by shape of a plate, points = [[x, y, displacement], ...] in mm. "
                   "Modes of a body are paired by name (A0, A1, CBR, B1-, B1+), the others by frequency")
      ->type_name("FILE");
  command->add_option("--count", typed->count, "modes of the reference to be paired (12)")
      ->type_name("N")
      ->check(CLI::Range(1, most_modes));
  return {.app = command, .request = [command, typed]() -> Request { return compare_request(*command, *typed); }};
}

} // namespace plate
