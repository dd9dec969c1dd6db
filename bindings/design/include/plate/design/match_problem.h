// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/design_document.h>
#include <plate/design/file_access.h>
#include <plate/laminates/stack_supplies.h>

#include <filesystem>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace plate
{

/// A key of the start design that may change, besides the layup.
struct FreeKey
{
  std::string key;
  double low;  ///< in the unit of the key
  double high; ///< in the unit of the key
};

/// Keys and values as after --set.
using KeyValues = std::vector<std::pair<std::string, std::string>>;

/// What is wanted of a laminate.
struct MatchWishes
{
  std::vector<std::string> modes;          ///< names or numbers; empty: count of the lowest
  int count = 0;                           ///< 0: modes are given
  std::optional<double> least_mass = {};   ///< [kg]
  std::optional<double> most_mass = {};    ///< [kg]
  std::optional<double> least_margin = {}; ///< [-]
  double likeness = 0.0;                   ///< of each mode with the reference's, see MatchGoal [-]
  std::optional<double> loss = {};         ///< part of the reference's by which losses may differ, see MatchGoal [-]
};

/// A match problem: which laminate makes this plate behave like that one?
struct MatchProblem
{
  std::string title;
  std::filesystem::path reference; ///< design file; empty if measured
  std::filesystem::path measured;  ///< list of measured modes; empty if there is a reference
  DesignDocument start;
  bool allow_outside = false; ///< see FileAccess
  StackSupplies supplies;
  MatchWishes wanted;
  std::vector<FreeKey> free;
};

/// Reads a match problem; files it names lie in its folder.
///
/// @param access     of the files, see DesignDocument
/// @param overrides  of keys of the start design, see DesignDocument::set()
/// @throws IoError      if a file cannot be read
/// @throws DesignError  with file and line: unknown keys, contradictions, limits that exclude each other
[[nodiscard]] MatchProblem read_match_problem(const std::filesystem::path& path, FileAccess access = {},
                                              const KeyValues& overrides = {});

} // namespace plate
