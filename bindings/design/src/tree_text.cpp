// SPDX-License-Identifier: MPL-2.0
#include "plain_text.h"
#include "tree.h"

#include <algorithm>

namespace plate
{
namespace
{

std::string in_line(const Node& node)
{
  if (const std::string* text = node.text())
    return in_quotes(*text);
  if (const double* number = node.number())
    return shown(*number);
  if (const bool* flag = node.flag())
    return *flag ? "true" : "false";
  std::string out;
  const auto add = [&](const std::string& entry) { out += (out.empty() ? "" : ", ") + entry; };
  if (const List* list = node.list())
  {
    for (const Node& entry : *list)
      add(in_line(entry));
    return '[' + out + ']';
  }
  for (const auto& [name, entry] : *node.table())
    add(in_quotes(name) + " = " + in_line(entry));
  return "{ " + out + " }";
}

/// A bare name, which is how a user would write most.
std::string key_text(const std::string& name)
{
  const bool bare = std::all_of(name.begin(), name.end(),
                                [](char c) {
                                  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                                         c == '_' || c == '-';
                                });
  return bare && !name.empty() ? name : in_quotes(name);
}

void add_table(const Table& table, const std::string& path, std::string& out)
{
  for (const auto& [name, node] : table)
    if (!node.table())
      out += key_text(name) + " = " + in_line(node) + '\n';
  for (const auto& [name, node] : table)
    if (const Table* inner = node.table())
    {
      const std::string inner_path = path.empty() ? key_text(name) : path + '.' + key_text(name);
      out += "\n[" + inner_path + "]\n";
      add_table(*inner, inner_path, out);
    }
}

} // namespace

std::string toml_text(const Node& root)
{
  std::string out;
  add_table(*root.table(), "", out);
  return out;
}

} // namespace plate
