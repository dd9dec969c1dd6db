// SPDX-License-Identifier: MPL-2.0
#include "csv_rows.h"

#include <plate/core/error.h>

#include <sstream>

namespace plate::validation
{
namespace
{

std::vector<std::string> cells_of(const std::string& line)
{
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i)
  {
    const bool doubled = quoted && line.substr(i, 2) == "\"\"";
    if (line[i] == ',' && !quoted)
      cells.emplace_back();
    else if (line[i] != '"' || doubled)
      cells.back() += line[i];
    else
      quoted = !quoted;
    i += doubled ? 1 : 0;
  }
  return cells;
}

} // namespace

std::vector<std::vector<std::string>> csv_rows(std::string_view name, std::string_view text,
                                               const std::vector<std::string>& header)
{
  std::vector<std::vector<std::string>> rows;
  std::istringstream in{std::string(text)};
  int number = 0;
  for (std::string line; std::getline(in, line);)
  {
    ++number;
    if (line.empty() || line.front() == '#')
      continue;
    rows.push_back(cells_of(line));
    if (rows.back().size() != header.size())
      throw IoError(message(name, ":", number, ": ", rows.back().size(), " cells; the header has ", header.size()));
  }
  if (rows.empty() || rows.front() != header)
    throw IoError(message(name, ": the first row is not the header that belongs there; was the file mixed up?"));
  rows.erase(rows.begin());
  return rows;
}

} // namespace plate::validation
