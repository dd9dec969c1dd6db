// SPDX-License-Identifier: MPL-2.0
#include "validate_report.h"

#include "json_text.h"
#include "text_table.h"

#include <plate/core/error.h>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;
using validation::CaseResult;
using validation::Comparison;
using validation::ReferenceCase;

constexpr int significant_digits = 7;
constexpr const char* red = "\x1b[31m";
constexpr const char* plain = "\x1b[0m";

std::vector<std::string> row_of(const CaseResult& result, const Comparison& value)
{
  return {result.reference->name,
          result.reference->source,
          value.quantity,
          compact(value.reference, significant_digits),
          compact(value.computed, significant_digits),
          fixed(value.difference_percent, 3),
          compact(value.tolerance_percent),
          value.pass ? "pass" : "FAIL"};
}

std::string topic_table(const std::vector<const CaseResult*>& results, const ValidateStyle& style)
{
  TextTable table({"<case", "<source", "<quantity", "reference", "computed", "diff. %", "tol. %", "<"});
  for (const CaseResult* result : results)
    if (style.values)
      for (const Comparison& value : result->comparisons)
        table.add(row_of(*result, value));
    else
      table.add(row_of(*result, worst(*result)));
  return table.text();
}

/// Lines that end in FAIL in red.
std::string with_colour(const std::string& text)
{
  std::string out;
  for (std::size_t begin = 0; begin < text.size();)
  {
    const std::size_t end = text.find('\n', begin);
    const std::string line = text.substr(begin, end - begin);
    const bool fails = line.size() > 4 && line.compare(line.size() - 4, 4, "FAIL") == 0;
    out += (fails ? red + line + plain : line) + '\n';
    begin = end + 1;
  }
  return out;
}

struct Count
{
  std::size_t passed = 0;
  std::size_t failed = 0;
};

Count count_values(const std::vector<CaseResult>& results)
{
  Count count;
  for (const CaseResult& result : results)
    for (const Comparison& value : result.comparisons)
      ++(value.pass ? count.passed : count.failed);
  return count;
}

std::string counted(std::size_t count, const char* what)
{
  return message(count, ' ', what, count == 1 ? "" : "s");
}

std::string summary(const std::vector<CaseResult>& results)
{
  std::set<std::string> sources;
  for (const CaseResult& result : results)
    sources.insert(result.reference->source);
  const Count count = count_values(results);
  std::string out =
      message("\n", counted(results.size(), "case"), " with ", counted(count.passed + count.failed, "value"), " from ",
              counted(sources.size(), "source"), ": ");
  if (count.failed == 0)
    return out + "all within their tolerances\n";
  return out + message(counted(count.failed, "value"), " beyond ",
                       count.failed == 1 ? "its tolerance" : "their tolerances", "\n");
}

Json value_json(const ReferenceCase& reference, const Comparison& value)
{
  return {{"case", reference.name},
          {"topic", reference.topic},
          {"source", reference.source},
          {"where", reference.where},
          {"mark", reference.mark},
          {"theory", reference.theory},
          {"quantity", value.quantity},
          {"reference", rounded(value.reference)},
          {"computed", rounded(value.computed)},
          {"difference_percent", rounded(value.difference_percent)},
          {"tolerance_percent", rounded(value.tolerance_percent)},
          {"tolerance_reason", reference.reason},
          {"pass", value.pass}};
}

} // namespace

std::string validate_text(const std::vector<CaseResult>& results, const ValidateStyle& style)
{
  std::string out;
  for (auto from = results.begin(); from != results.end();)
  {
    const std::string& topic = from->reference->topic;
    std::vector<const CaseResult*> together;
    for (; from != results.end() && from->reference->topic == topic; ++from)
      together.push_back(&*from);
    out += message(out.empty() ? "" : "\n", topic, "\n", topic_table(together, style));
  }
  for (const CaseResult& result : results)
    if (!result.failure.empty())
      out += message("\n", result.reference->name, ": ", result.failure, "\n");
  if (!style.values)
    out += "\nOf each case the value nearest to its tolerance; --values lists all.";
  out += summary(results);
  return style.coloured ? with_colour(out) : out;
}

std::string validate_json(const std::vector<CaseResult>& results)
{
  Json cases = Json::array();
  for (const CaseResult& result : results)
    for (const Comparison& value : result.comparisons)
      cases.push_back(value_json(*result.reference, value));
  const Count count = count_values(results);
  return json_text({{"cases", std::move(cases)}, {"passed", count.passed}, {"failed", count.failed}});
}

std::string case_list_text(const std::vector<const ReferenceCase*>& cases)
{
  TextTable table({"<case", "<source", "<mark", "<theory", "values"});
  for (const ReferenceCase* entry : cases)
    table.add({entry->name, entry->source, entry->mark, entry->theory, std::to_string(entry->values.size())});
  return table.text();
}

std::string case_list_json(const std::vector<const ReferenceCase*>& cases)
{
  Json list = Json::array();
  for (const ReferenceCase* entry : cases)
    list.push_back({{"case", entry->name},
                    {"topic", entry->topic},
                    {"source", entry->source},
                    {"where", entry->where},
                    {"mark", entry->mark},
                    {"theory", entry->theory},
                    {"values", entry->values.size()}});
  return json_text({{"cases", std::move(list)}});
}

} // namespace plate
