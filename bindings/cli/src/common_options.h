// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "command_line.h"

#include <CLI/CLI.hpp>

#include <string>
#include <vector>

namespace plate
{

/// Beyond that a plate model of usual fineness is not accurate.
inline constexpr int most_modes = 200;

/// Common options as they are typed, before they are put together.
struct TypedCommon
{
  CommonOptions common;
  std::vector<std::string> overrides;
};

/// A command without options but --help: what is left over is reported by parse_command_line, with the nearest option.
///
/// @param example  a whole line, shown below the help
[[nodiscard]] CLI::App* add_command(CLI::App& plate, const std::string& name, const std::string& help,
                                    const std::string& group, const std::string& example);

/// FILE and the options that every command on design files takes.
void add_common_options(CLI::App& command, TypedCommon& typed);

/// @throws UsageError
[[nodiscard]] CommonOptions common_options(const CLI::App& command, const TypedCommon& typed);

void add_json(CLI::App& command, bool& json);
CLI::Option* add_out(CLI::App& command, std::string& out);
void check_out(const CLI::App& command, const std::string& out); ///< @throws UsageError if the folder has no name
void add_threads(CLI::App& command, int& threads);
void add_count(CLI::App& command, int& count);

/// An option that may be given several times, each time with one value.
template <class T>
CLI::Option* add_repeatable(CLI::App& command, const std::string& name, std::vector<T>& values, const std::string& help)
{
  return command.add_option(name, values, help)->allow_extra_args(false);
}

} // namespace plate
