// SPDX-License-Identifier: MPL-2.0
#include "check_tree.h"

#include "key_path.h"
#include "plain_text.h"

#include <plate/design/design_error.h>
#include <plate/design/keys.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace plate
{
namespace
{

constexpr std::size_t max_entries = 1000; // soundholes, plies, corners: a longer list is no design but a slip
constexpr std::size_t max_name = 64;      // bytes, so that a message stays readable

std::string below(const std::string& path, const std::string& name)
{
  return path.empty() ? name : path + "." + name;
}

bool is_name(std::string_view name)
{
  const auto fits = [](char c)
  { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-'; };
  return !name.empty() && name.size() <= max_name && std::all_of(name.begin(), name.end(), fits);
}

class TreeChecker
{
public:
  TreeChecker(const std::string& file, FileKind kind) : file_(file), kind_(kind) {}

  void check_table(const Node& node, const std::string& path) const
  {
    for (const auto& [name, child] : *node.table())
    {
      const std::string key = below(path, name);
      if (!is_name(name))
        fail(child, message(path, path.empty() ? "" : ".", '"', shortened(name), '"'),
             message("a name has letters, digits, _ and - only, from 1 to ", max_name, " of them; keys of ",
                     path.empty() ? "the file" : "[" + path + "]", ": ", names(path)));
      check_entry(child, key, path);
    }
  }

private:
  void check_entry(const Node& node, const std::string& path, const std::string& parent) const
  {
    if (const Key* key = find_key(path, kind_))
      check_value(node, path, *key);
    else if (is_table_list_path(path, kind_))
      check_table_list(node, path);
    else if (!is_table_path(path, kind_))
      fail_unknown(node, path, parent);
    else if (!node.table())
      fail(node, path + " = " + shown(node), message("must be a table with the keys ", names(path)));
    else
      check_table(node, path);
  }

  void check_table_list(const Node& node, const std::string& path) const
  {
    const List* list = node.list();
    const bool tables = list && std::all_of(list->begin(), list->end(), [](const Node& n) { return n.table(); });
    if (!tables)
      fail(node, path + " = " + shown(node),
           message("must be a list of tables, [[", path, "]] or [{ }, ...], each with the keys ", names(path + ".1")));
    if (list->size() > max_entries)
      fail(node, path, message("has ", list->size(), " entries; at most ", max_entries, " are allowed"));
    for (std::size_t i = 0; i < list->size(); ++i)
      check_table((*list)[i], message(path, ".", i + 1));
  }

  void check_value(const Node& node, const std::string& path, const Key& key) const
  {
    bool good = false;
    switch (key.kind)
    {
    case KeyKind::text:
      good = is_text(node);
      break;
    case KeyKind::flag:
      good = node.flag();
      break;
    case KeyKind::choice:
      check_word(node, path, key);
      return;
    case KeyKind::number:
      good = is_number(node, key);
      break;
    case KeyKind::numbers:
      good = is_word_of(node, key) ||
             (has_count(node, key) && std::all_of(node.list()->begin(), node.list()->end(),
                                                  [&](const Node& entry) { return is_number(entry, key); }));
      break;
    case KeyKind::texts:
      good = has_count(node, key) && std::all_of(node.list()->begin(), node.list()->end(), is_text);
      break;
    case KeyKind::points:
      good = is_point_list(node, key);
      break;
    case KeyKind::choices:
      if (!has_count(node, key))
        break;
      for (const Node& entry : *node.list())
        check_word(entry, path, key);
      return;
    }
    if (!good)
      fail(node, path + " = " + shown(node), "must be " + allowed_values(key));
  }

  static bool is_number(const Node& node, const Key& key)
  {
    return node.number() && std::isfinite(*node.number()) && key.range.contains(*node.number());
  }

  static bool is_text(const Node& node)
  {
    return node.text() && !node.text()->empty() && node.text()->size() <= max_text_bytes && is_plain_text(*node.text());
  }

  static bool is_word_of(const Node& node, const Key& key)
  {
    return node.text() && std::find(key.choices.begin(), key.choices.end(), *node.text()) != key.choices.end();
  }

  static bool has_count(const Node& node, const Key& key)
  {
    if (!node.list())
      return false;
    return key.count == 0 ? !node.list()->empty() && node.list()->size() <= max_entries
                          : node.list()->size() == static_cast<std::size_t>(key.count);
  }

  static bool is_point_list(const Node& node, const Key& key)
  {
    const auto is_point = [&](const Node& point)
    {
      return point.list() && point.list()->size() == 2 && is_number(point.list()->front(), key) &&
             is_number(point.list()->back(), key);
    };
    return node.list() && node.list()->size() >= static_cast<std::size_t>(key.count) &&
           node.list()->size() <= max_entries && std::all_of(node.list()->begin(), node.list()->end(), is_point);
  }

  void check_word(const Node& node, const std::string& path, const Key& key) const
  {
    const std::vector<std::string> words(key.choices.begin(), key.choices.end());
    if (node.text() && std::find(words.begin(), words.end(), *node.text()) != words.end())
      return;
    std::string what = "must be " + allowed_values(key);
    if (node.text())
      what += "; nearest: \"" + nearest_word(*node.text(), words) + '"';
    fail(node, path + " = " + shown(node), what);
  }

  [[nodiscard]] std::string names(const std::string& table) const
  {
    std::string out;
    for (const std::string& name : names_in_table(table, kind_))
      out += (out.empty() ? "" : ", ") + name;
    return out;
  }

  [[noreturn]] void fail_unknown(const Node& node, const std::string& path, const std::string& parent) const
  {
    const std::string table = parent.empty() ? std::string("the file") : "[" + parent + "]";
    const std::string value = node.table() ? path : path + " = " + shown(node);
    fail(node, value,
         message("unknown key; nearest: ", nearest_key(path, kind_), "; keys of ", table, ": ", names(parent)));
  }

  [[noreturn]] void fail(const Node& node, const std::string& subject, const std::string& what) const
  {
    throw DesignError(message(place_of(node, file_), ": ", subject, ": ", what));
  }

  const std::string& file_;
  FileKind kind_;
};

} // namespace

std::string place_of(const Node& node, std::string_view file)
{
  if (node.line == Node::command_line)
    return "--set";
  return node.line == Node::computed ? message(file, ", changed") : message(file, ":", node.line);
}

void check_tree(const Node& root, const std::string& file, FileKind kind)
{
  TreeChecker(file, kind).check_table(root, "");
}

} // namespace plate
