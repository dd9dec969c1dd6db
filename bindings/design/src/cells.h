// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// A line of a table in a text file that holds more than blanks and a comment.
struct CellLine
{
  int number;               ///< in the file, from 1
  std::string_view content; ///< without comment
};

/// Lines of a table: `#` before comments, a byte order mark is passed over. The text must outlive them.
///
/// @param name  of the file, for messages
/// @throws DesignError with the line of a NUL byte
[[nodiscard]] std::vector<CellLine> cell_lines(std::string_view text, const std::string& name);

/// What separates the cells of a line: a semicolon if there is one, else a tab if there is one, else a comma.
[[nodiscard]] char separator_of(std::string_view line);

/// Cells without blanks and quotes around them, at least one.
[[nodiscard]] std::vector<std::string_view> split_cells(std::string_view line, char separator);

/// The number a cell holds, finite or not, decimals with a point; nothing if it is none.
[[nodiscard]] std::optional<double> number_in(std::string_view cell);

/// Whether a cell holds words rather than a number: a slip in a number is none.
[[nodiscard]] bool is_name(std::string_view cell);

/// A cell for messages, in quotes, shortened.
[[nodiscard]] std::string shown_cell(std::string_view cell);

/// ASCII letters made small.
[[nodiscard]] std::string lower(std::string_view text);

} // namespace plate
