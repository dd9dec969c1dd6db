// SPDX-License-Identifier: MPL-2.0
#include "command_line.h"

#include "command_definitions.h"

#include <plate/design/keys.h>

#include <algorithm>

namespace plate
{
namespace
{

std::vector<std::string> option_names(const CLI::App& command)
{
  std::vector<std::string> names;
  for (const CLI::Option* option : command.get_options())
    for (const std::string& name : option->get_lnames())
      names.push_back("--" + name);
  return names;
}

void check_leftovers(const CLI::App& command)
{
  const std::vector<std::string> left = command.remaining();
  if (left.empty())
    return;
  // The value of a mistyped option is left over as well, so an option comes first.
  const auto option =
      std::find_if(left.begin(), left.end(), [](const std::string& word) { return word.rfind('-', 0) == 0; });
  if (option == left.end())
    throw UsageError(message("plate ", command.get_name(), ": \"", left.front(),
                             "\" is one argument too many; see plate ", command.get_name(), " --help"));
  const std::string name = option->substr(0, option->find('='));
  throw UsageError(message("plate ", command.get_name(), ": unknown option ", name, "; nearest: ",
                           nearest_word(name, option_names(command)), "; see plate ", command.get_name(), " --help"));
}

void check_command(const PlateCommands& plate)
{
  if (const std::vector<std::string> left = plate.app->remaining(); !left.empty())
  {
    if (left.front().rfind('-', 0) == 0)
      throw UsageError(
          message("plate: unknown option ", left.front(), "; options follow the command; see plate --help"));
    std::vector<std::string> names;
    for (const CommandDefinition& command : plate.commands)
      names.push_back(command.app->get_name());
    throw UsageError(message("plate: unknown command \"", left.front(),
                             "\"; nearest: ", nearest_word(left.front(), names), "; see plate --help"));
  }
  if (plate.app->get_subcommands().empty())
    throw UsageError("plate: a command is missing, e.g. plate modes FILE; see plate --help");
}

} // namespace

PlateCommands plate_commands()
{
  PlateCommands plate;
  plate.app = std::make_unique<CLI::App>("Vibration of arched instrument plates, from a design file.\n"
                                         "A prediction does not replace a test piece.",
                                         "plate");
  CLI::App& app = *plate.app;
  app.set_help_flag("--help,-h", "print this text");
  app.set_version_flag("--version", "plate " LIBPLATE_VERSION, "print the version");
  app.require_subcommand(0, 1);
  app.allow_extras();
  plate.commands = {define_start(app), define_modes(app),       define_laminate(app), define_compare(app),
                    define_sweep(app), define_sensitivity(app), define_match(app),    define_load(app),
                    define_body(app),  define_validate(app)};
  std::string examples = "Examples:";
  for (const CommandDefinition& command : plate.commands)
    examples += command.app->get_footer().substr(command.app->get_footer().find('\n'));
  app.footer(
      examples +
      "\n\nplate COMMAND --help lists the options of a command."
      "\nExit status: 0 done, 1 the numerics or a validation case failed, 2 the input is wrong, 130 interrupted.");
  return plate;
}

Request parse_command_line(int argc, const char* const* argv)
{
  const PlateCommands plate = plate_commands();
  try
  {
    plate.app->parse(argc, argv);
  }
  catch (const CLI::CallForHelp&)
  {
    return TextRequest{plate.app->help()};
  }
  catch (const CLI::CallForVersion& version)
  {
    return TextRequest{message(version.what(), "\n")};
  }
  catch (const CLI::ParseError& error)
  {
    throw UsageError(message("plate: ", error.what(), "; see --help"));
  }
  check_command(plate);
  const auto parsed = std::find_if(plate.commands.begin(), plate.commands.end(),
                                   [](const CommandDefinition& command) { return command.app->parsed(); });
  check_leftovers(*parsed->app);
  return parsed->request();
}

} // namespace plate
