// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>
#include <vector>

namespace plate
{

/// A number with a fixed count of decimals; empty for NaN.
[[nodiscard]] std::string fixed(double value, int decimals);

/// The same with a plus before what is positive.
[[nodiscard]] std::string with_sign(double value, int decimals);

/// A number in the shortest form that keeps nine digits: enough for any use, and free of the last bits' noise.
[[nodiscard]] std::string compact(double value, int digits = 9);

/// The number that compact() writes; NaN stays NaN.
[[nodiscard]] double rounded(double value);

/// Rows of text in columns: numbers to the right, words to the left.
class TextTable
{
public:
  /// @param heads  of the columns; one that begins with '<' is set to the left
  explicit TextTable(std::vector<std::string> heads);

  void add(std::vector<std::string> row);

  [[nodiscard]] std::string text() const; ///< lines ending in '\n', no blanks at their ends

private:
  std::vector<std::vector<std::string>> rows_;
  std::vector<bool> left_;
};

/// One line of a CSV file, cells quoted where they must be.
[[nodiscard]] std::string csv_line(const std::vector<std::string>& cells);

} // namespace plate
