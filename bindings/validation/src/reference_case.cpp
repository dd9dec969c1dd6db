// SPDX-License-Identifier: MPL-2.0
#include <plate/validation/reference_case.h>

#include "csv_rows.h"
#include "embedded_files.h"

#include <plate/core/error.h>

#include <algorithm>
#include <charconv>

namespace plate::validation
{
namespace
{

double number(const std::string& cell, const std::string& where)
{
  double value = 0.0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (error != std::errc() || end != cell.data() + cell.size())
    throw IoError(message(where, ": \"", cell, "\" is no number"));
  return value;
}

std::vector<ReferenceCase> described_cases(const EmbeddedFile& file)
{
  std::vector<ReferenceCase> cases;
  for (const auto& row :
       csv_rows(file.name, file.text, {"case", "topic", "source", "where", "mark", "theory", "reason"}))
    cases.push_back({row[0], row[1], row[2], row[3], row[4], row[5], row[6], {}});
  return cases;
}

void add_values(std::vector<ReferenceCase>& cases, const EmbeddedFile& file)
{
  for (const auto& row : csv_rows(file.name, file.text, {"case", "quantity", "value", "tolerance_percent"}))
  {
    const auto entry =
        std::find_if(cases.begin(), cases.end(), [&](const ReferenceCase& c) { return c.name == row[0]; });
    if (entry == cases.end())
      throw IoError(message(file.name, ": case ", row[0], " is not in cases.csv"));
    const std::string where = message(file.name, ": ", row[0], ", ", row[1]);
    entry->values.push_back({row[1], number(row[2], where), number(row[3], where)});
  }
}

std::vector<ReferenceCase> read_cases()
{
  const std::span<const EmbeddedFile> files = embedded_files();
  std::vector<ReferenceCase> cases = described_cases(files.front());
  for (const EmbeddedFile& file : files.subspan(1))
    add_values(cases, file);
  for (const ReferenceCase& entry : cases)
    if (entry.values.empty())
      throw IoError(message("cases.csv: ", entry.name, " has no values"));
  return cases;
}

} // namespace

const std::vector<ReferenceCase>& reference_cases()
{
  static const std::vector<ReferenceCase> cases = read_cases();
  return cases;
}

} // namespace plate::validation
