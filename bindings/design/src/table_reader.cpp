// SPDX-License-Identifier: MPL-2.0
#include "table_reader.h"

#include "check_tree.h"

#include <plate/design/design_error.h>

#include <algorithm>
#include <utility>

namespace plate
{
namespace
{

bool lists_word(std::string_view words, std::string_view word)
{
  while (true)
  {
    const std::size_t bar = words.find('|');
    if (words.substr(0, bar) == word)
      return true;
    if (bar == std::string_view::npos)
      return false;
    words.remove_prefix(bar + 1);
  }
}

} // namespace

TableReader::TableReader(const Node& root, const std::string& file, std::string path, FileKind kind)
    : TableReader(root, file, path, kind, path.empty() ? &root : find_node(root, path))
{
}

TableReader::TableReader(const Node& root, const std::string& file, std::string path, FileKind kind, const Node* node)
    : root_(root), file_(file), path_(std::move(path)), kind_(kind), table_(node)
{
}

std::string TableReader::key_path(std::string_view name) const
{
  return path_.empty() ? std::string(name) : message(path_, ".", name);
}

const Key& TableReader::key(std::string_view name) const
{
  const Key* found = find_key(key_path(name), kind_);
  if (!found) // a slip in our own code, not in a design
    throw std::logic_error(message("TableReader: no key is declared for ", key_path(name)));
  return *found;
}

const Node* TableReader::find(std::string_view name) const
{
  return table_ ? find_entry(*table_->table(), name) : nullptr;
}

const Node& TableReader::required(std::string_view name) const
{
  if (const Node* node = find(name))
    return *node;
  fail(name, message("missing; must be ", allowed_values(key(name))));
}

double TableReader::number(std::string_view name) const
{
  const Key& declared = key(name);
  if (!has(name) && declared.default_number)
    return *declared.default_number * declared.unit.si;
  return *required(name).number() * declared.unit.si;
}

std::optional<double> TableReader::optional_number(std::string_view name) const
{
  const Key& declared = key(name);
  const Node* node = find(name);
  return node ? std::optional(*node->number() * declared.unit.si) : std::nullopt;
}

std::vector<double> TableReader::numbers(std::string_view name) const
{
  const double si = key(name).unit.si;
  std::vector<double> out;
  for (const Node& entry : *required(name).list())
    out.push_back(*entry.number() * si);
  return out;
}

std::vector<Eigen::Vector2d> TableReader::points(std::string_view name) const
{
  const double si = key(name).unit.si;
  std::vector<Eigen::Vector2d> out;
  for (const Node& point : *required(name).list())
    out.emplace_back(*point.list()->front().number() * si, *point.list()->back().number() * si);
  return out;
}

std::string TableReader::text(std::string_view name) const
{
  return *required(name).text();
}

bool TableReader::is_word(std::string_view name) const
{
  const Node* node = find(name);
  return node && node->text();
}

std::string TableReader::word(std::string_view name, std::string_view fallback) const
{
  static_cast<void>(key(name));
  const Node* node = find(name);
  return node ? *node->text() : std::string(fallback);
}

std::vector<std::string> TableReader::words(std::string_view name) const
{
  std::vector<std::string> out;
  for (const Node& entry : *required(name).list())
    out.push_back(*entry.text());
  return out;
}

bool TableReader::flag(std::string_view name, bool fallback) const
{
  static_cast<void>(key(name));
  const Node* node = find(name);
  return node ? *node->flag() : fallback;
}

TableReader TableReader::table(std::string_view name) const
{
  return {root_, file_, key_path(name), kind_, find(name)};
}

std::vector<TableReader> TableReader::tables(std::string_view name) const
{
  std::vector<TableReader> out;
  if (const Node* node = find(name))
    for (std::size_t i = 0; i < node->list()->size(); ++i)
      out.push_back(TableReader(root_, file_, message(key_path(name), ".", i + 1), kind_, &(*node->list())[i]));
  return out;
}

std::vector<std::string> TableReader::names() const
{
  std::vector<std::string> out;
  if (table_)
    for (const auto& [name, node] : *table_->table())
      out.push_back(name);
  return out;
}

void TableReader::check_kind(std::string_view kind, std::string_view selector) const
{
  const auto kinds_of = [&](const std::string& name) -> std::string_view
  {
    const Key* declared = find_key(key_path(name), kind_);
    return declared ? declared->only_with : std::string_view(); // tables and lists of tables serve every kind
  };
  for (const std::string& name : names())
  {
    const std::string_view users = kinds_of(name);
    if (users.empty() || lists_word(users, kind))
      continue;
    std::string used;
    for (const std::string& other : names_in_table(path_, kind_))
      if (const std::string_view with = kinds_of(other); with.empty() || lists_word(with, kind))
        used += (used.empty() ? "" : ", ") + other;
    fail(name, message("not used with ", path_, ".", selector, " = \"", kind, "\"; keys of this kind: ", used));
  }
}

void TableReader::fail(std::string_view name, const std::string& what) const
{
  const Node* node = find(name);
  const Node* place = node ? node : (table_ ? table_ : &root_);
  const std::string where = table_ ? place_of(*place, file_) : file_;
  const std::string value = node && !node->table() ? " = " + shown(*node) : "";
  throw DesignError(message(where, ": ", key_path(name), value, ": ", what));
}

void TableReader::fail_here(const std::string& what) const
{
  throw DesignError(message(table_ ? place_of(*table_, file_) : file_, ": ", path_, ": ", what));
}

} // namespace plate
