// SPDX-License-Identifier: MPL-2.0
#include "reference_page.h"

#include "markdown.h"

#include <plate/core/error.h>
#include <plate/design/keys.h>

#include <algorithm>
#include <span>

namespace plate
{
namespace
{

/// The part of a name up to its last dot: the table the key stands in.
std::string table_of(const Key& key)
{
  const std::size_t dot = key.name.rfind('.');
  return std::string(dot == std::string_view::npos ? std::string_view() : key.name.substr(0, dot));
}

/// As the table is opened in a file: [outline], [[soundhole]], [material.NAME], patch.plies.
std::string heading(std::string table)
{
  if (table.empty())
    return "At the top";
  if (const std::size_t any = table.find('*'); any != std::string::npos)
    table.replace(any, 1, "NAME");
  const std::size_t list = table.find("[]");
  if (list == std::string::npos)
    return code(message("[", table, "]"));
  if (list + 2 == table.size() && table.find('.') == std::string::npos)
    return code(message("[[", table.substr(0, list), "]]"));
  for (std::size_t at = list; at != std::string::npos; at = table.find("[]"))
    table.erase(at, 2);
  return message("Each entry of ", code(table));
}

std::string key_cell(const Key& key)
{
  std::string cell = code(key.name.substr(key.name.rfind('.') + 1));
  std::string kinds;
  for (const std::string_view kind : kinds_using(key))
    kinds += (kinds.empty() ? "" : ", ") + std::string(kind);
  return kinds.empty() ? cell : message(cell, " (", kinds, ")");
}

std::string default_cell(const Key& key)
{
  if (const std::string value = default_value(key); !value.empty())
    return code(value);
  return key.default_text.empty() ? "must be given" : std::string(key.default_text);
}

std::string key_row(const Key& key)
{
  return markdown_row(
      {key_cell(key), allowed_values(key), default_cell(key), code(example_value(key)), std::string(key.help)});
}

/// The tables of a kind of file, each with its keys.
std::string tables_of(std::span<const Key> keys)
{
  std::string out;
  std::vector<std::string> tables;
  for (const Key& key : keys)
    if (std::find(tables.begin(), tables.end(), table_of(key)) == tables.end())
      tables.push_back(table_of(key));
  for (const std::string& table : tables)
  {
    out += "\n### " + heading(table) + "\n\n" + markdown_header({"Key", "Value", "Default", "Example", "Meaning"});
    for (const Key& key : keys)
      if (table_of(key) == table)
        out += key_row(key);
  }
  return out;
}

} // namespace

std::string key_section()
{
  const std::string text =
      "## The design file\n\n"
      "A text file in TOML. Lists of tables count their entries from 1 in dotted keys: "
      "`--set soundhole.1.length=78`.\nIn brackets behind a key: the kinds of its table that use it.\n";
  return text + tables_of(design_keys());
}

std::string match_key_section()
{
  return "## The match problem\n\n"
         "What plate match reads, a text file in TOML. Beside the keys below it may have a table `[free]`: keys of the "
         "start design\nthat may change, each with its least and greatest value in the unit of the key, "
         "`\"arching.height\" = [11.0, 14.0]`.\n" +
         tables_of(match_keys());
}

} // namespace plate
