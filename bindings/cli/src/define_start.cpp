// SPDX-License-Identifier: MPL-2.0
#include "command_definitions.h"
#include "common_options.h"

#include <plate/design/keys.h>

#include <algorithm>
#include <cstddef>

namespace plate
{
namespace
{

struct TypedStart
{
  StartRequest request;
  std::string family;
  std::string make;
};

std::string in_words(std::span<const std::string> names)
{
  std::string words;
  for (const std::string& name : names)
    words += (words.empty() ? "" : ", ") + name;
  return words;
}

/// The place of a name in its list, which is that in the enumeration.
std::size_t place_of(const std::string& option, const std::string& name, std::span<const std::string> names)
{
  const auto found = std::find(names.begin(), names.end(), name);
  if (name.empty())
    throw UsageError(
        message("plate start: ", option, " is missing; give one of ", in_words(names), "; see plate start --help"));
  if (found == names.end())
    throw UsageError(message("plate start: ", option, " ", name, ": must be one of ", in_words(names),
                             "; nearest: ", nearest_word(name, names)));
  return static_cast<std::size_t>(found - names.begin());
}

StartRequest start_request(const CLI::App& command, const TypedStart& typed)
{
  StartRequest request = typed.request;
  request.family = static_cast<InstrumentFamily>(place_of("--family", typed.family, family_names()));
  request.make = static_cast<PlateMake>(place_of("--make", typed.make, make_names()));
  check_out(command, request.out);
  if (!request.file.empty() && !request.out.empty())
    throw UsageError(message("plate start: ", request.file, " and --out ", request.out, ": give one of them"));
  return request;
}

} // namespace

CommandDefinition define_start(CLI::App& plate)
{
  CLI::App* command =
      add_command(plate, "start", "a commented design file to begin with, from the trade's usual measures",
                  command_group::plates, "plate start --family viola --make laminate my_viola.toml");
  const auto typed = std::make_shared<TypedStart>();
  command->add_option("FILE", typed->request.file, "file to write; without it the design goes to standard output");
  command->add_option("--family", typed->family, in_words(family_names()))->type_name("NAME");
  command->add_option("--make", typed->make, in_words(make_names()))->type_name("NAME");
  command->add_flag("--force", typed->request.force, "write over a file that is there");
  add_json(*command, typed->request.json);
  add_out(*command, typed->request.out)
      ->description("write FAMILY_MAKE_top.toml and design.schema.json, for editors, into the folder DIR");
  return {.app = command, .request = [command, typed]() -> Request { return start_request(*command, *typed); }};
}

} // namespace plate
