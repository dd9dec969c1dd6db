// SPDX-License-Identifier: MPL-2.0
#include <plate/validation/validation_page.h>

#include <plate/core/error.h>

#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <sstream>

namespace plate::validation
{
namespace
{

constexpr double value_rounding = 3e-5;      // of a value
constexpr double difference_rounding = 4e-3; // percentage points

std::string number(double value, std::chars_format format, int precision)
{
  std::array<char, 64> buffer{};
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, format, precision);
  return {buffer.data(), result.ptr};
}

std::string row(const std::vector<std::string>& cells)
{
  std::string out = "|";
  for (const std::string& cell : cells)
    out += cell.empty() ? " |" : " " + cell + " |";
  return out + "\n";
}

std::string head(const std::vector<std::string>& cells)
{
  return row(cells) + row(std::vector<std::string>(cells.size(), "---"));
}

std::vector<std::string> cells_of(const std::string& line)
{
  std::vector<std::string> cells;
  std::istringstream in(line);
  for (std::string cell; std::getline(in, cell, '|');)
    cells.push_back(cell);
  return cells;
}

std::string origins(const std::vector<const CaseResult*>& results)
{
  std::string out = head({"case", "source", "where", "mark", "theory", "reason of the tolerance"});
  for (const CaseResult* result : results)
  {
    const ReferenceCase& c = *result->reference;
    out += row({c.name, c.source, c.where, c.mark, c.theory, c.reason});
  }
  return out;
}

std::string values(const std::vector<const CaseResult*>& results)
{
  std::string out =
      head({"case", "source", "mark", "quantity", "reference", "computed", "difference %", "tolerance %", "within"});
  for (const CaseResult* result : results)
    for (const Comparison& value : result->comparisons)
      out += row({result->reference->name, result->reference->source, result->reference->mark, value.quantity,
                  number(value.reference, std::chars_format::general, 10),
                  number(value.computed, std::chars_format::general, 6),
                  number(value.difference_percent, std::chars_format::fixed, 3),
                  number(value.tolerance_percent, std::chars_format::general, 6), value.pass ? "yes" : "**no**"});
  return out;
}

/// Numbers in the columns of computed values and differences may differ by rounding; all else must be the same.
bool same_line(const std::string& a, const std::string& b)
{
  constexpr std::size_t computed = 6; // column, the first is empty
  constexpr std::size_t difference = 7;
  const std::vector<std::string> left = cells_of(a);
  const std::vector<std::string> right = cells_of(b);
  if (a == b || left.size() != right.size() || left.size() <= difference)
    return a == b;
  for (std::size_t i = 0; i < left.size(); ++i)
  {
    if (left[i] == right[i])
      continue;
    if (i != computed && i != difference)
      return false;
    const double x = std::strtod(left[i].c_str(), nullptr);
    const double y = std::strtod(right[i].c_str(), nullptr);
    if (!(std::abs(x - y) <= (i == computed ? value_rounding * std::abs(y) : difference_rounding)))
      return false;
  }
  return true;
}

} // namespace

std::string validation_page(const std::vector<CaseResult>& results)
{
  std::size_t num_values = 0;
  std::size_t num_beyond = 0;
  for (const CaseResult& result : results)
    for (const Comparison& value : result.comparisons)
    {
      ++num_values;
      num_beyond += value.pass ? 0 : 1;
    }
  std::string out = message(
      "# Validation\n\nWhat `plate validate` computes, rounded, beside values that others found. Written by the "
      "program;"
      " do not edit it:\n`cmake --build --preset release --target update_validation`. Data: `reference/data/`; keys of"
      " sources: `BIBLIOGRAPHY.md`.\nRecomputed: by independent programs, for this project. A value that is beyond its"
      " tolerance stays in.\n\n",
      results.size(), " cases, ", num_values, " values, ", num_beyond, " of them beyond their tolerance.\n");
  for (auto from = results.begin(); from != results.end();)
  {
    const std::string& topic = from->reference->topic;
    std::vector<const CaseResult*> together;
    for (; from != results.end() && from->reference->topic == topic; ++from)
      together.push_back(&*from);
    out += "\n## " + topic + "\n\n" + origins(together) + "\n" + values(together);
  }
  return out;
}

bool same_page(const std::string& a, const std::string& b)
{
  std::istringstream left(a);
  std::istringstream right(b);
  std::string x;
  std::string y;
  while (true)
  {
    const bool more = static_cast<bool>(std::getline(left, x));
    if (more != static_cast<bool>(std::getline(right, y)))
      return false;
    if (!more)
      return true;
    if (!same_line(x, y))
      return false;
  }
}

} // namespace plate::validation
