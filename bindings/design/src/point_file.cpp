// SPDX-License-Identifier: MPL-2.0
#include "point_file.h"

#include "cells.h"

#include <plate/design/design_error.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>

namespace plate
{
namespace
{

constexpr std::size_t max_points = 200000; // as the fits take
constexpr double max_size = 1e5;           // a hundred metres: beyond that the unit is wrong

class PointReader
{
public:
  PointReader(const std::string& name, std::span<const PointColumn> columns) : name_(name), columns_(columns) {}

  PointTable read(std::string_view text)
  {
    if (text.size() > max_point_file_bytes)
      throw DesignError(message(name_, ": has ", text.size(), " bytes; points take at most ", max_point_file_bytes,
                                ", thin them out"));
    for (const CellLine& line : cell_lines(text, name_))
    {
      line_ = line.number;
      read_line(line.content);
    }
    if (table_.rows.empty())
      throw DesignError(message(name_, ": no points; one line each with ", wanted(), " is expected"));
    return std::move(table_);
  }

private:
  void read_line(std::string_view line)
  {
    if (separator_ == '\0')
      separator_ = separator_of(line);
    const std::vector<std::string_view> cells = split_cells(line, separator_);
    if (order_.empty())
    {
      if (is_name(cells.front()))
      {
        read_header(cells);
        return;
      }
      take_given_order(cells.size());
    }
    if (cells.size() != num_cells_)
      fail(message(cells.size(), " cells; each line needs ", num_cells_, has_header_ ? ", as the first one" : "", " (",
                   has_header_ ? "names" : wanted(), ")"));
    if (table_.rows.size() == max_points)
      fail(message("more than ", max_points, " points; thin them out"));
    PointRow row{.line = line_, .values = {}};
    for (std::size_t c = 0; c < columns_.size(); ++c)
      if (order_[c])
        row.values[c] = value_of(cells[*order_[c]], columns_[c].name);
    table_.rows.push_back(row);
  }

  void read_header(const std::vector<std::string_view>& cells)
  {
    has_header_ = true;
    num_cells_ = cells.size();
    for (const PointColumn& column : columns_)
    {
      std::optional<std::size_t> place;
      for (std::size_t i = 0; i < cells.size(); ++i)
        if (lower(cells[i]) == column.name)
        {
          if (place)
            fail(message("the column ", column.name, " is named twice"));
          place = i;
        }
      if (!place && column.required)
        fail(message("there is no column ", column.name, "; the names of the columns must hold ", wanted()));
      order_.push_back(place);
    }
    table_.has_optional = order_.back().has_value() && !columns_.back().required;
  }

  void take_given_order(std::size_t cells)
  {
    num_cells_ = cells;
    for (std::size_t c = 0; c < columns_.size(); ++c)
      order_.push_back(c < cells ? std::optional(c) : std::nullopt);
    const auto required = static_cast<std::size_t>(
        std::count_if(columns_.begin(), columns_.end(), [](const PointColumn& c) { return c.required; }));
    if (cells < required || cells > columns_.size())
      fail(message(cells, cells == 1 ? " cell" : " cells", "; without a line of names each line holds ", wanted()));
    table_.has_optional = cells > required;
  }

  double value_of(std::string_view cell, std::string_view column) const
  {
    const std::optional<double> value = number_in(cell);
    if (!value)
      fail(message(column, " = ", shown_cell(cell), ": not a number",
                   cell.find(',') != std::string_view::npos ? "; decimals are written with a point" : ""));
    if (!(std::abs(*value) <= max_size))
      fail(message(column, " = ", shown_cell(cell), ": must be finite and at most ", max_size, " in size"));
    return *value;
  }

  /// "x, y, z" or "x, y and perhaps corner".
  [[nodiscard]] std::string wanted() const
  {
    std::string out;
    for (const PointColumn& column : columns_)
      out += message(out.empty() ? "" : column.required ? ", " : " and perhaps ", column.name);
    return out;
  }

  [[noreturn]] void fail(const std::string& what) const { throw DesignError(message(name_, ":", line_, ": ", what)); }

  const std::string& name_;
  std::span<const PointColumn> columns_;
  PointTable table_;
  std::vector<std::optional<std::size_t>> order_; ///< cell of each column asked for
  std::size_t num_cells_ = 0;
  bool has_header_ = false;
  char separator_ = '\0';
  int line_ = 1;
};

} // namespace

PointTable read_points(std::string_view text, const std::string& name, std::span<const PointColumn> columns)
{
  return PointReader(name, columns).read(text);
}

} // namespace plate
