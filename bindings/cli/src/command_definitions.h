// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "command_line.h"

#include <CLI/CLI.hpp>

#include <functional>
#include <memory>
#include <vector>

namespace plate
{

/// One command: its options as the parser and the reference page see them, and the request they make.
struct CommandDefinition
{
  CLI::App* app; ///< its parser, owned by that of the whole command line
  /// Puts together what was typed, once the command was parsed. @throws UsageError
  std::function<Request()> request;
};

/// The whole command line.
struct PlateCommands
{
  std::unique_ptr<CLI::App> app;
  std::vector<CommandDefinition> commands; ///< in the order in which they are listed
};

/// A new command: one file, define_NAME.cpp, and one line in plate_commands().
[[nodiscard]] PlateCommands plate_commands();

[[nodiscard]] CommandDefinition define_start(CLI::App& plate);
[[nodiscard]] CommandDefinition define_modes(CLI::App& plate);
[[nodiscard]] CommandDefinition define_laminate(CLI::App& plate);
[[nodiscard]] CommandDefinition define_compare(CLI::App& plate);
[[nodiscard]] CommandDefinition define_sweep(CLI::App& plate);
[[nodiscard]] CommandDefinition define_sensitivity(CLI::App& plate);
[[nodiscard]] CommandDefinition define_load(CLI::App& plate);
[[nodiscard]] CommandDefinition define_match(CLI::App& plate);
[[nodiscard]] CommandDefinition define_body(CLI::App& plate);
[[nodiscard]] CommandDefinition define_validate(CLI::App& plate);

/// Headings of the lists in --help.
namespace command_group
{
inline constexpr const char* plates = "One plate";
inline constexpr const char* bodies = "A closed body";
inline constexpr const char* studies = "Studies";
inline constexpr const char* trust = "Trust";
} // namespace command_group

} // namespace plate
