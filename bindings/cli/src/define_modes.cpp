// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

namespace plate
{
namespace
{

constexpr double least_accuracy = 1e-4; // [%]; rounding and the tolerance of the solver lie not far below
constexpr double most_accuracy = 10.0;  // [%]

struct TypedModes
{
  TypedCommon common;
  int count = ModesRequest().count;
  std::string beside;
  double accuracy = 0.0;
  int most_unknowns = ModesRequest().most_unknowns;
  std::string matrices;
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
  command
      ->add_option(
          "--accuracy", typed->accuracy,
          "refines the mesh until the error bar of every listed mode is below P percent of its frequency, or the "
          "next mesh would be too large (exit status 1), and says what it did")
      ->type_name("P")
      ->check(CLI::Range(least_accuracy, most_accuracy));
  command
      ->add_option("--most-unknowns", typed->most_unknowns,
                   "with --accuracy: no finer mesh of more unknowns than this is tried")
      ->type_name("N")
      ->check(CLI::Range(1000, 3000000))
      ->capture_default_str();
  command
      ->add_option("--matrices", typed->matrices,
                   "write stiffness and mass of the first design (Matrix Market form) into the folder DIR")
      ->type_name("DIR");
  return {.app = command,
          .request = [command, typed]() -> Request
          {
            if (command->count("--beside") > 0 && typed->beside.empty())
              throw UsageError("--beside: the name of a design file is missing");
            if (command->count("--matrices") > 0 && typed->matrices.empty())
              throw UsageError("--matrices: the name of a folder is missing");
            return ModesRequest{.common = common_options(*command, typed->common),
                                .count = typed->count,
                                .beside = typed->beside,
                                .accuracy = typed->accuracy,
                                .most_unknowns = typed->most_unknowns,
                                .matrices = typed->matrices};
          }};
}

} // namespace plate
