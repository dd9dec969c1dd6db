// SPDX-License-Identifier: MPL-2.0
#include "reference_page.h"

#include "command_definitions.h"
#include "markdown.h"

#include <plate/core/error.h>

#include <string>
#include <string_view>

namespace plate
{
namespace
{

std::string option_cell(const CLI::Option& option)
{
  if (option.get_positional())
    return code(option.get_name());
  std::string names;
  for (const std::string& name : option.get_lnames())
    names += message(names.empty() ? "" : ", ", "--", name);
  for (const std::string& name : option.get_snames())
    names += message(names.empty() ? "" : ", ", "-", name);
  std::string value = option.get_type_size() == 0 ? std::string() : option.get_type_name();
  if (const std::size_t type = value.find(":INT"); type != std::string::npos)
    value.erase(type, 4); // the parser's "N:INT in [1 - 256]"
  return code(value.empty() ? names : message(names, " ", value));
}

std::string example_of(const CLI::App& command)
{
  std::string footer = command.get_footer();
  constexpr std::string_view indent = "\n  ";
  for (std::size_t at = footer.find(indent); at != std::string::npos; at = footer.find(indent, at))
    footer.replace(at, indent.size(), "\n");
  return footer.substr(footer.find("plate "));
}

std::string command_text(const CLI::App& command)
{
  std::string out = message("\n### ", code("plate " + command.get_name()), "\n\n", command.get_description(), "\n\n",
                            markdown_header({"Option", "Meaning"}));
  for (const CLI::Option* option : command.get_options())
    out += markdown_row({option_cell(*option), option->get_description()});
  return out + "\n```\n" + example_of(command) + "\n```\n";
}

} // namespace

std::string command_section()
{
  std::string out =
      "## Commands\n\n"
      "`plate COMMAND FILE [options]`. Exit status: 0 done, 1 the numerics or a validation case failed, 2 the input\n"
      "is wrong, 130 interrupted.\n";
  for (const CommandDefinition& command : plate_commands().commands)
    out += command_text(*command.app);
  return out;
}

} // namespace plate
