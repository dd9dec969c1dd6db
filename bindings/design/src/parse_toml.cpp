// SPDX-License-Identifier: MPL-2.0
#include "tree.h"

#include "dotted_keys.h"
#include "plain_text.h"

#include <plate/design/design_error.h>

#include <toml++/toml.h>

#include <algorithm>
#include <cstddef>
#include <utility>

namespace plate
{
namespace
{

constexpr std::size_t max_bytes = std::size_t{1} << 20; // a design is a page of text; data go into files of their own
constexpr std::size_t max_fault = 300;                  // bytes of what the parser says, which may quote the file
constexpr int max_dots = 12;                            // of a dotted key
constexpr int max_nodes_deep = 12;                      // the deepest key has five parts

Node converted(const toml::node& node, const std::string& name, int depth);

int line_of(const toml::node& node)
{
  return static_cast<int>(node.source().begin.line);
}

[[noreturn]] void fail(const std::string& name, int line, const std::string& what)
{
  throw DesignError(line > 0 ? message(name, ":", line, ": ", what) : message(name, ": ", what));
}

Table converted_table(const toml::table& table, const std::string& name, int depth)
{
  using Source = toml::source_position;
  std::vector<std::pair<Source, Entry>> entries;
  entries.reserve(table.size());
  for (const auto& [key, child] : table)
    entries.emplace_back(child.source().begin, Entry{std::string(key.str()), converted(child, name, depth + 1)});
  // The parser sorts by name; the first fault a user hears of should be the first in the file.
  std::stable_sort(entries.begin(), entries.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  Table out;
  out.reserve(entries.size());
  for (auto& [source, entry] : entries)
    out.push_back(std::move(entry));
  return out;
}

List converted_list(const toml::array& array, const std::string& name, int depth)
{
  List out;
  out.reserve(array.size());
  for (const toml::node& child : array)
    out.push_back(converted(child, name, depth + 1));
  return out;
}

Node converted(const toml::node& node, const std::string& name, int depth)
{
  const int line = line_of(node);
  if (depth > max_nodes_deep)
    fail(name, line, "tables and lists are nested too deeply");
  if (const toml::table* table = node.as_table())
    return {converted_table(*table, name, depth), line};
  if (const toml::array* array = node.as_array())
    return {converted_list(*array, name, depth), line};
  if (const auto text = node.value_exact<std::string>())
    return {*text, line};
  if (const auto integer = node.value_exact<std::int64_t>())
    return {static_cast<double>(*integer), line};
  if (const auto number = node.value_exact<double>())
    return {*number, line};
  if (const auto flag = node.value_exact<bool>())
    return {*flag, line};
  fail(name, line, "dates and times are not used in a design");
}

void mark_as_command_line(Node& node)
{
  node.line = Node::command_line;
  if (Table* table = std::get_if<Table>(&node.value))
    for (auto& [key, child] : *table)
      mark_as_command_line(child);
  if (List* list = std::get_if<List>(&node.value))
    for (Node& child : *list)
      mark_as_command_line(child);
}

} // namespace

Node parse_toml(std::string_view text, const std::string& name)
{
  if (text.size() > max_bytes)
    fail(name, 0, message("the file has ", text.size(), " bytes; a design has at most ", max_bytes));
  // The parser ends the process on some files with NUL bytes, so they must not reach it.
  if (const std::size_t nul = text.find('\0'); nul != std::string_view::npos)
    fail(name, static_cast<int>(1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(nul), '\n')),
         "NUL byte; a design is a text file in UTF-8");
  // Tables within tables by the hundred thousand, a.a.a. ... = 1, end the process when they are taken down.
  if (const int line = line_of_deep_key(text, max_dots); line > 0)
    fail(name, line, message("a dotted key has more than ", max_dots, " dots; the deepest key of a design has 4"));
  try
  {
    const toml::table table = toml::parse(text, name);
    return {converted_table(table, name, 0), 1};
  }
  catch (const toml::parse_error& error)
  {
    fail(name, static_cast<int>(error.source().begin.line),
         message("not valid TOML: ", shortened(error.description(), max_fault)));
  }
}

Node parse_value(std::string_view text)
{
  if (text.find_first_of("\n\r") == std::string_view::npos)
  {
    try
    {
      const Node root = parse_toml(message("value = ", text), "--set");
      if (const Table* table = root.table(); table && table->size() == 1)
      {
        Node value = table->front().node;
        mark_as_command_line(value);
        return value;
      }
    }
    catch (const DesignError&)
    {
      // Not TOML: a word such as flat or spruce, typed without the quotes that a shell would eat anyway.
    }
  }
  return {std::string(text), Node::command_line};
}

} // namespace plate
