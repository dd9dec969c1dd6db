// SPDX-License-Identifier: MPL-2.0
#include "command_line.h"

#include <plate/design/keys.h>

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace plate
{
namespace
{

constexpr int most_modes = 200;  // beyond that a plate model of this fineness is not accurate
constexpr int most_steps = 1000; // a slip of the pen, not a sweep
constexpr int most_threads = 256;

/// Options as they are typed, before they are put together.
struct Typed
{
  CommonOptions common;
  std::vector<std::string> overrides;
  int count = 12;
  std::vector<std::string> keys;
  std::vector<double> from;
  std::vector<double> to;
  std::vector<int> steps;
};

template <class T>
CLI::Option* add_repeatable(CLI::App& command, const std::string& name, std::vector<T>& values, const std::string& help)
{
  return command.add_option(name, values, help)->allow_extra_args(false);
}

void add_common_options(CLI::App& command, Typed& typed)
{
  command.add_option("FILE", typed.common.file, "design file");
  command.add_flag("--json", typed.common.json, "print the results as JSON and nothing else");
  command.add_option("--out", typed.common.out, "write files into the folder DIR")->type_name("DIR");
  add_repeatable(command, "--set", typed.overrides, "override a key of the file, e.g. --set arching.height=16")
      ->type_name("KEY=VALUE");
  command.add_flag("--timing", typed.common.timing, "add the seconds taken to the results");
  command.add_option("--threads", typed.common.threads, "number of threads (1)")
      ->type_name("N")
      ->check(CLI::Range(1, most_threads));
  command.set_help_flag("--help,-h", "print this text");
  command.allow_extras(); // reported below, with the nearest option
}

void add_count(CLI::App& command, Typed& typed)
{
  command.add_option("--count", typed.count, "number of elastic modes (12)")
      ->type_name("N")
      ->check(CLI::Range(1, most_modes));
}

CLI::App* add_modes(CLI::App& app, Typed& typed)
{
  CLI::App* command = app.add_subcommand("modes", "modes of a plate: frequencies, names, loss; pictures with --out");
  add_common_options(*command, typed);
  add_count(*command, typed);
  command->footer("Example:\n  plate modes examples/viola/spruce_top.toml --count 8 --out out/spruce");
  return command;
}

CLI::App* add_sweep(CLI::App& app, Typed& typed)
{
  CLI::App* command = app.add_subcommand("sweep", "modes over a range of one or two keys, followed by their shape");
  add_common_options(*command, typed);
  add_count(*command, typed);
  add_repeatable(*command, "--key", typed.keys, "key to change; give --key, --from, --to, --steps twice for two keys")
      ->type_name("KEY");
  add_repeatable(*command, "--from", typed.from, "first value, in the unit of the key")->type_name("A");
  add_repeatable(*command, "--to", typed.to, "last value")->type_name("B");
  add_repeatable(*command, "--steps", typed.steps, "number of values, both ends included")
      ->type_name("N")
      ->check(CLI::Range(2, most_steps));
  command->footer("Example:\n  plate sweep examples/viola/laminate_top.toml --key layup.scale --from 0.7 --to 1.3 "
                  "--steps 7 --out out/sweep");
  return command;
}

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

/// Puts together what every command shares.
CommonOptions common_options(const CLI::App& command, const Typed& typed)
{
  CommonOptions common = typed.common;
  if (common.file.empty())
    throw UsageError(
        message("plate ", command.get_name(), ": a design file is missing; see plate ", command.get_name(), " --help"));
  if (command.count("--out") > 0 && common.out.empty())
    throw UsageError("--out: the name of a folder is missing");
  for (const std::string& text : typed.overrides)
  {
    const std::size_t equals = text.find('=');
    if (equals == std::string::npos || equals == 0)
      throw UsageError(message("--set ", text, ": must be KEY=VALUE, e.g. --set arching.height=16"));
    common.overrides.emplace_back(text.substr(0, equals), text.substr(equals + 1));
  }
  return common;
}

std::vector<SweptKey> swept_keys(const Typed& typed)
{
  const std::size_t count = typed.keys.size();
  if (count < 1 || count > 2)
    throw UsageError(message("plate sweep: one or two keys can be swept, got ", count,
                             "; give --key KEY --from A --to B "
                             "--steps N for each"));
  if (typed.from.size() != count || typed.to.size() != count || typed.steps.size() != count)
    throw UsageError(message("plate sweep: each --key needs one --from, one --to and one --steps; got ", count,
                             " --key, ", typed.from.size(), " --from, ", typed.to.size(), " --to, ", typed.steps.size(),
                             " --steps"));
  std::vector<SweptKey> keys;
  for (std::size_t i = 0; i < count; ++i)
  {
    if (!(typed.from[i] < typed.to[i]) || !std::isfinite(typed.to[i] - typed.from[i]))
      throw UsageError(message("plate sweep: --from must be less than --to; got ", typed.from[i], " and ", typed.to[i],
                               " for ", typed.keys[i]));
    keys.push_back({typed.keys[i], typed.from[i], typed.to[i], typed.steps[i]});
  }
  if (count == 2 && keys[0].key == keys[1].key)
    throw UsageError(message("plate sweep: the two keys must differ; got ", keys[0].key, " twice"));
  return keys;
}

void check_command(const CLI::App& app)
{
  if (const std::vector<std::string> left = app.remaining(); !left.empty())
  {
    if (left.front().rfind('-', 0) == 0)
      throw UsageError(
          message("plate: unknown option ", left.front(), "; options follow the command; see plate --help"));
    std::vector<std::string> names;
    for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; }))
      names.push_back(command->get_name());
    throw UsageError(message("plate: unknown command \"", left.front(),
                             "\"; nearest: ", nearest_word(left.front(), names), "; see plate --help"));
  }
  if (app.get_subcommands().empty())
    throw UsageError("plate: a command is missing, e.g. plate modes FILE; see plate --help");
}

} // namespace

CommandLine parse_command_line(int argc, const char* const* argv)
{
  CLI::App app("Vibration of arched instrument plates, from a design file.\n"
               "A prediction does not replace a test piece.",
               "plate");
  app.set_help_flag("--help,-h", "print this text");
  app.set_version_flag("--version", "plate " LIBPLATE_VERSION, "print the version");
  app.require_subcommand(0, 1);
  app.allow_extras();
  app.footer("Exit status: 0 done, 1 the numerics failed, 2 the input is wrong, 130 interrupted.\n"
             "Example:\n  plate modes examples/viola/spruce_top.toml");
  Typed typed;
  const CLI::App* modes = add_modes(app, typed);
  const CLI::App* sweep = add_sweep(app, typed);
  try
  {
    app.parse(argc, argv);
  }
  catch (const CLI::CallForHelp&)
  {
    return {.text = app.help(), .modes = {}, .sweep = {}};
  }
  catch (const CLI::CallForVersion& version)
  {
    return {.text = message(version.what(), "\n"), .modes = {}, .sweep = {}};
  }
  catch (const CLI::ParseError& error)
  {
    throw UsageError(message("plate: ", error.what(), "; see --help"));
  }
  check_command(app);
  check_leftovers(*app.get_subcommands().front());
  if (modes->parsed())
    return {.text = {}, .modes = ModesRequest{common_options(*modes, typed), typed.count}, .sweep = {}};
  return {
      .text = {}, .modes = {}, .sweep = SweepRequest{common_options(*sweep, typed), swept_keys(typed), typed.count}};
}

} // namespace plate
