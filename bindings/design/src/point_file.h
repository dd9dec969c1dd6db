// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// A column that a file of points must or may have.
struct PointColumn
{
  std::string_view name;
  bool required = true; ///< optional columns come last
};

/// One measured point.
struct PointRow
{
  int line;                     ///< of the file, from 1
  std::array<double, 3> values; ///< in the order of the columns asked for, as written; 0 for a column left out
};

/// What a file of points holds.
struct PointTable
{
  std::vector<PointRow> rows; ///< at least one
  bool has_optional = false;  ///< whether the optional column is there
};

/// Reads points from text: cells separated by commas, semicolons or tabs, `#` before comments, decimals with a point.
///
/// A first line of names puts the columns in any order, others are ignored; without it they are as asked for.
///
/// @param text     of the file, UTF-8 with or without byte order mark
/// @param name     of the file, for messages
/// @param columns  2 or 3
/// @throws DesignError with file and line of the first fault: no points or more than 200 000, more than 16 MiB, NUL
/// bytes,
///         wrong number of cells, no number, not finite or beyond 100 000
[[nodiscard]] PointTable read_points(std::string_view text, const std::string& name,
                                     std::span<const PointColumn> columns);

inline constexpr std::size_t max_point_file_bytes = std::size_t{16} << 20;

} // namespace plate
