// SPDX-License-Identifier: MPL-2.0
#include "common_options.h"

#include <cstddef>

namespace plate
{
namespace
{

constexpr int most_threads = 256;
constexpr const char* common_group = "Options of every command";

} // namespace

CLI::App* add_command(CLI::App& plate, const std::string& name, const std::string& help, const std::string& group,
                      const std::string& example)
{
  CLI::App* command = plate.add_subcommand(name, help)->group(group);
  command->set_help_flag("--help,-h", "print this text")->group(common_group);
  command->allow_extras();
  command->footer("Example:\n  " + example);
  return command;
}

void add_common_options(CLI::App& command, TypedCommon& typed)
{
  command.add_option("FILE", typed.common.file, "design file");
  add_json(command, typed.common.json);
  add_out(command, typed.common.out);
  add_repeatable(command, "--set", typed.overrides, "override a key of the file, e.g. --set arching.height=16")
      ->type_name("KEY=VALUE")
      ->group(common_group);
  command
      .add_flag("--allow-outside", typed.common.allow_outside, "let the design name files outside the folder it is in")
      ->group(common_group);
  command.add_flag("--timing", typed.common.timing, "add the seconds taken to the results")->group(common_group);
  add_threads(command, typed.common.threads);
}

CommonOptions common_options(const CLI::App& command, const TypedCommon& typed)
{
  CommonOptions common = typed.common;
  if (common.file.empty())
    throw UsageError(
        message("plate ", command.get_name(), ": a design file is missing; see plate ", command.get_name(), " --help"));
  check_out(command, common.out);
  for (const std::string& text : typed.overrides)
  {
    const std::size_t equals = text.find('=');
    if (equals == 0 || equals == std::string::npos)
      throw UsageError(message("--set ", text, ": must be KEY=VALUE, e.g. --set arching.height=16"));
    common.overrides.emplace_back(text.substr(0, equals), text.substr(equals + 1));
  }
  return common;
}

void add_json(CLI::App& command, bool& json)
{
  command.add_flag("--json", json, "print the results as JSON and nothing else")->group(common_group);
}

CLI::Option* add_out(CLI::App& command, std::string& out)
{
  return command.add_option("--out", out, "write files into the folder DIR")->type_name("DIR")->group(common_group);
}

void check_out(const CLI::App& command, const std::string& out)
{
  if (command.count("--out") > 0 && out.empty())
    throw UsageError("--out: the name of a folder is missing");
}

void add_threads(CLI::App& command, int& threads)
{
  command.add_option("--threads", threads, "number of threads (1)")
      ->type_name("N")
      ->check(CLI::Range(1, most_threads))
      ->group(common_group);
}

void add_count(CLI::App& command, int& count)
{
  command.add_option("--count", count, "number of elastic modes (12)")
      ->type_name("N")
      ->check(CLI::Range(1, most_modes));
}

} // namespace plate
