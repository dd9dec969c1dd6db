// SPDX-License-Identifier: MPL-2.0
#include "text_table.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>

namespace plate
{
namespace
{

/// Characters, not bytes: names may hold letters beyond ASCII.
std::size_t width_of(const std::string& text)
{
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string csv_cell(const std::string& text)
{
  if (text.find_first_of(",\"\n\r") == std::string::npos)
    return text;
  std::string out = "\"";
  for (const char c : text)
    out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + '"';
}

} // namespace

std::string fixed(double value, int decimals)
{
  if (std::isnan(value))
    return {};
  std::array<char, 400> buffer{};
  const auto [end, error] =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
  static_cast<void>(error); // the longest double has 309 digits before the point
  const std::string text(buffer.data(), end);
  const bool zero = text.find_first_of("123456789") == std::string::npos;
  return zero && text.front() == '-' ? text.substr(1) : text;
}

std::string with_sign(double value, int decimals)
{
  return (value > 0.0 ? "+" : "") + fixed(value, decimals);
}

std::string compact(double value, int digits)
{
  if (std::isnan(value))
    return {};
  std::array<char, 64> buffer{};
  const auto [end, error] =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::general, digits);
  static_cast<void>(error);
  return {buffer.data(), end};
}

double rounded(double value)
{
  if (!std::isfinite(value))
    return value;
  const std::string text = compact(value);
  double out = 0.0;
  std::from_chars(text.data(), text.data() + text.size(), out);
  return out + 0.0; // -0 + 0 = 0
}

TextTable::TextTable(std::vector<std::string> heads)
{
  for (std::string& head : heads)
  {
    left_.push_back(head.rfind('<', 0) == 0);
    if (left_.back())
      head.erase(0, 1);
  }
  rows_.push_back(std::move(heads));
}

void TextTable::add(std::vector<std::string> row)
{
  row.resize(left_.size());
  rows_.push_back(std::move(row));
}

std::string TextTable::text() const
{
  std::vector<std::size_t> widths(left_.size(), 0);
  for (const std::vector<std::string>& row : rows_)
    for (std::size_t i = 0; i < row.size(); ++i)
      widths[i] = std::max(widths[i], width_of(row[i]));
  std::string out;
  for (const std::vector<std::string>& row : rows_)
  {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i)
    {
      const std::string space(widths[i] - width_of(row[i]), ' ');
      line += "  " + (left_[i] ? row[i] + space : space + row[i]);
    }
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + '\n';
  }
  return out;
}

std::string csv_line(const std::vector<std::string>& cells)
{
  std::string out;
  for (std::size_t i = 0; i < cells.size(); ++i)
    out += (i > 0 ? "," : "") + csv_cell(cells[i]);
  return out + '\n';
}

} // namespace plate
