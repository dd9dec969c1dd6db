// SPDX-License-Identifier: MPL-2.0
#include "cells.h"
#include "measured_rows.h"

#include <plate/design/design_error.h>

#include <algorithm>
#include <cstddef>

namespace plate
{
namespace
{

/// The cells of one line by the names in the first.
class TableRow
{
public:
  TableRow(const std::string& file, const std::vector<std::string>& names, const CellLine& line, char separator)
      : file_(file), names_(names), line_(line.number), cells_(split_cells(line.content, separator))
  {
    if (cells_.size() != names_.size())
      fail(message(cells_.size(), " cells; each line needs ", names_.size(), ", as the first one (names)"));
  }

  /// Empty for a column that is not there.
  [[nodiscard]] std::string_view text(std::string_view column) const
  {
    const auto place = std::find(names_.begin(), names_.end(), column);
    return place == names_.end() ? std::string_view() : cells_[static_cast<std::size_t>(place - names_.begin())];
  }

  /// Nothing for an empty cell.
  [[nodiscard]] std::optional<double> number(std::string_view column) const
  {
    const std::string_view cell = text(column);
    if (cell.empty())
      return std::nullopt;
    const std::optional<double> value = number_in(cell);
    if (!value)
      fail(message(column, " = ", shown_cell(cell), ": not a number; decimals are written with a point"));
    return value;
  }

private:
  [[noreturn]] void fail(const std::string& what) const { throw DesignError(message(file_, ":", line_, ": ", what)); }

  const std::string& file_;
  const std::vector<std::string>& names_;
  int line_;
  std::vector<std::string_view> cells_;
};

constexpr std::string_view wanted = "mode, name, frequency_hz, loss_percent (frequency_hz must be there)";

std::vector<std::string> column_names(const CellLine& line, char separator, const std::string& file)
{
  const auto fail = [&](const std::string& what)
  {
    throw DesignError(message(file, ":", line.number, ": ", what, "; the first line holds names of columns: ", wanted));
  };
  std::vector<std::string> names;
  for (const std::string_view cell : split_cells(line.content, separator))
  {
    const std::string name = lower(cell);
    if (const std::string fault = wrong_unit(name); !fault.empty())
      fail(message("column ", shown_cell(cell), ": ", fault));
    if (!name.empty() && std::find(names.begin(), names.end(), name) != names.end())
      fail(message("the column ", shown_cell(cell), " is named twice"));
    names.push_back(name);
  }
  if (std::find(names.begin(), names.end(), "frequency_hz") == names.end())
    fail("there is no column frequency_hz");
  return names;
}

} // namespace

MeasuredRows rows_of_table(std::string_view text, const std::string& name)
{
  const std::vector<CellLine> lines = cell_lines(text, name);
  MeasuredRows out;
  if (lines.empty())
    return out;
  const char separator = separator_of(lines.front().content);
  const std::vector<std::string> names = column_names(lines.front(), separator, name);
  for (std::size_t i = 1; i < lines.size(); ++i)
  {
    const TableRow row(name, names, lines[i], separator);
    out.rows.push_back({.line = lines[i].number,
                        .number = row.number("mode"),
                        .name = std::string(row.text("name")),
                        .frequency_hz = row.number("frequency_hz"),
                        .loss_percent = row.number("loss_percent"),
                        .points = {}});
  }
  return out;
}

} // namespace plate
