// SPDX-License-Identifier: MPL-2.0
#include "cells.h"

#include "plain_text.h"

#include <plate/design/design_error.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <cstddef>

namespace plate
{
namespace
{

constexpr std::string_view blanks = " \t\r\v\f";

std::string_view trimmed(std::string_view text, std::string_view what = blanks)
{
  const std::size_t first = text.find_first_not_of(what);
  if (first == std::string_view::npos)
    return {};
  return text.substr(first, text.find_last_not_of(what) - first + 1);
}

void check_no_nul(std::string_view text, const std::string& name)
{
  const std::size_t nul = text.find('\0');
  if (nul == std::string_view::npos)
    return;
  const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(nul), '\n');
  throw DesignError(message(name, ":", line, ": NUL byte; tables are text files in UTF-8"));
}

} // namespace

std::vector<CellLine> cell_lines(std::string_view text, const std::string& name)
{
  check_no_nul(text, name);
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  if (text.substr(0, byte_order_mark.size()) == byte_order_mark)
    text.remove_prefix(byte_order_mark.size());
  std::vector<CellLine> lines;
  for (int number = 1; !text.empty(); ++number)
  {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (const std::string_view content = line.substr(0, line.find('#')); !trimmed(content).empty())
      lines.push_back({number, content});
  }
  return lines;
}

char separator_of(std::string_view line)
{
  if (line.find(';') != std::string_view::npos)
    return ';';
  return line.find('\t') != std::string_view::npos ? '\t' : ',';
}

std::vector<std::string_view> split_cells(std::string_view line, char separator)
{
  std::vector<std::string_view> cells;
  while (true)
  {
    const std::size_t end = line.find(separator);
    cells.push_back(trimmed(trimmed(line.substr(0, end)), "\""));
    if (end == std::string_view::npos)
      return cells;
    line.remove_prefix(end + 1);
  }
}

std::optional<double> number_in(std::string_view cell)
{
  if (cell.size() > 1 && cell.front() == '+' && cell[1] != '-')
    cell.remove_prefix(1);
  double value = 0.0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (error == std::errc::result_out_of_range && end == cell.data() + cell.size())
    return HUGE_VAL;
  if (error != std::errc() || end != cell.data() + cell.size())
    return std::nullopt;
  return value;
}

bool is_name(std::string_view cell)
{
  if (cell.empty() || number_in(cell))
    return false;
  const char first = cell.front();
  return std::isdigit(static_cast<unsigned char>(first)) == 0 && first != '-' && first != '+' && first != '.';
}

std::string shown_cell(std::string_view cell)
{
  constexpr std::size_t longest = 24; // bytes
  return message('"', shortened(cell, longest), '"');
}

std::string lower(std::string_view text)
{
  std::string out(text);
  for (char& c : out)
    c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

} // namespace plate
