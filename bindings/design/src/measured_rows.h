// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// One measured mode as its file has it, numbers not yet checked.
struct MeasuredRow
{
  int line; ///< of the file, from 1
  std::optional<double> number = {};
  std::string name = {};
  std::optional<double> frequency_hz = {};
  std::optional<double> loss_percent = {};
  std::vector<std::array<double, 3>> points = {}; ///< x [mm], y [mm], displacement
};

/// A whole file.
struct MeasuredRows
{
  std::string title = {};
  std::vector<MeasuredRow> rows = {};
};

/// Rows of a table with a line of names. @throws DesignError
[[nodiscard]] MeasuredRows rows_of_table(std::string_view text, const std::string& name);

/// Rows of TOML: [[mode]] tables. @throws DesignError
[[nodiscard]] MeasuredRows rows_of_toml(std::string_view text, const std::string& name);

/// What is said of a key or column that gives a frequency or loss in another unit than Hz and %; empty for any other.
[[nodiscard]] std::string wrong_unit(const std::string& key);

} // namespace plate
