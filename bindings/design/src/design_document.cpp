// SPDX-License-Identifier: MPL-2.0
#include <plate/design/design_document.h>

#include "check_tree.h"
#include "key_path.h"
#include "named_file.h"
#include "plain_text.h"
#include "point_parts.h"
#include "read_design.h"
#include "table_reader.h"

#include <plate/design/body_design.h>
#include <plate/design/design.h>
#include <plate/design/design_error.h>
#include <plate/design/keys.h>
#include <plate/design/load_design.h>
#include <plate/materials/library.h>

#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

namespace plate
{
namespace
{

[[noreturn]] void fail_set(std::string_view key, const std::string& what)
{
  constexpr std::size_t longest = 1000; // the nearest key and its table may hold parts of what was typed
  throw DesignError(shortened(message("--set: ", shortened(key), ": ", what), longest));
}

[[noreturn]] void fail_unknown(std::string_view path)
{
  const std::size_t dot = path.rfind('.');
  const std::string_view parent = dot == std::string_view::npos ? std::string_view() : path.substr(0, dot);
  std::string names;
  for (const std::string& name : names_in_table(parent))
    names += (names.empty() ? "" : ", ") + name;
  fail_set(path,
           message("unknown key; nearest: ", nearest_key(path),
                   names.empty() ? "" : message("; keys of ", parent.empty() ? "the file" : parent, ": ", names)));
}

/// A key that names a value, or one number of a list of numbers.
const Key& settable_key(std::string_view path)
{
  if (const Key* key = find_key(path))
    return *key;
  const std::size_t dot = path.rfind('.');
  if (dot != std::string_view::npos && is_entry_number(path.substr(dot + 1)))
    if (const Key* key = find_key(path.substr(0, dot)); key && key->count > 0)
      return *key;
  if (is_table_path(path))
    fail_set(path, "is a table; set one of its keys");
  fail_unknown(path);
}

const Key& numeric_key(std::string_view path)
{
  const Key& key = settable_key(path);
  const bool one_of_list = find_key(path) == nullptr;
  if (key.kind == KeyKind::number || (key.kind == KeyKind::numbers && one_of_list))
    return key;
  throw DesignError(message(path, ": not a numeric key; it takes ", allowed_values(key),
                            key.kind == KeyKind::numbers ? message("; give one of them, ", path, ".1") : ""));
}

Node& entry_of(Table& table, const std::string& name)
{
  for (auto& [key, node] : table)
    if (key == name)
      return node;
  table.push_back({name, Node{Table(), Node::command_line}});
  return table.back().node;
}

/// Walks down to the value at a path; tables on the way that are not there yet are made, entries of lists are not.
Node& value_at(Node& root, std::string_view path)
{
  Node* node = &root;
  std::string walked;
  for (const std::string& part : split_path(path))
  {
    if (List* list = std::get_if<List>(&node->value))
    {
      const Node* entry = find_node(*node, part);
      if (!entry)
        fail_set(path, message("there is no entry ", part, "; ", walked, " has ", list->size()));
      node = &(*list)[std::stoul(part) - 1];
    }
    else if (Table* table = std::get_if<Table>(&node->value))
    {
      if (is_entry_number(part) && table->empty())
        fail_set(path, message("there is no entry ", part, "; ", walked, " is not given in the file"));
      node = &entry_of(*table, part);
    }
    else
      fail_set(path, message(walked, " is ", shown(*node), ", which has no entries"));
    walked += (walked.empty() ? "" : ".") + part;
  }
  return *node;
}

/// Adds the paths of all numbers of numeric keys under a node.
void add_numeric_keys(const Node& node, const std::string& path, std::vector<std::string>& keys)
{
  const Key* key = find_key(path);
  if (key && key->kind == KeyKind::number)
    keys.push_back(path);
  else if (key && key->kind == KeyKind::numbers)
    for (std::size_t i = 1; i <= node.list()->size(); ++i)
      keys.push_back(message(path, '.', i));
  else if (const Table* table = node.table())
    for (const auto& [name, entry] : *table)
      add_numeric_keys(entry, path.empty() ? name : message(path, '.', name), keys);
  else if (const List* list = node.list(); list && !key)
    for (std::size_t i = 0; i < list->size(); ++i)
      add_numeric_keys((*list)[i], message(path, '.', i + 1), keys);
}

} // namespace

DesignDocument::DesignDocument(std::shared_ptr<const Node> root, std::string name, std::shared_ptr<PointFiles> files)
    : root_(std::move(root)), name_(std::move(name)), files_(std::move(files))
{
}

DesignDocument DesignDocument::from_file(const std::filesystem::path& path, FileAccess access)
{
  return from_text(text_of(path), path.string(), with_folder(std::move(access), path));
}

DesignDocument DesignDocument::from_text(std::string_view text, std::string name, FileAccess access)
{
  auto root = std::make_shared<const Node>(parse_toml(text, name));
  check_tree(*root, name);
  return {std::move(root), std::move(name), std::make_shared<PointFiles>(std::move(access))};
}

void DesignDocument::set(std::string_view key, std::string_view value)
{
  static_cast<void>(settable_key(key));
  auto changed = std::make_shared<Node>(*root_);
  value_at(*changed, key) = parse_value(value);
  check_tree(*changed, name_);
  root_ = std::move(changed);
}

void DesignDocument::set_number(std::string_view key, double value)
{
  static_cast<void>(numeric_key(key));
  auto changed = std::make_shared<Node>(*root_);
  value_at(*changed, key) = {value, Node::computed};
  check_tree(*changed, name_);
  root_ = std::move(changed);
}

namespace
{

/// Plies as a list of the file.
Node plies_node(const Laminate& laminate)
{
  constexpr double mm = 1e-3;
  constexpr double degrees = std::numbers::pi / 180.0;
  const auto value = [](double number) { return Node{std::round(number * 1e9) / 1e9, Node::computed}; };
  List plies;
  for (const Ply& ply : laminate.plies)
    plies.push_back({Table{{"material", {ply.material.name, Node::computed}},
                           {"thickness", value(ply.thickness / mm)},
                           {"angle", value(ply.angle.in_radians() / degrees)}},
                     Node::computed});
  return {std::move(plies), Node::computed};
}

} // namespace

void DesignDocument::set_layup(const Laminate& laminate)
{
  auto changed = std::make_shared<Node>(*root_);
  Table& table = std::get<Table>(changed->value);
  std::erase_if(table, [](const Entry& entry) { return entry.name == "layup" || entry.name == "thickness"; });
  table.push_back({"layup", {Table{{"plies", plies_node(laminate)}}, Node::computed}});
  check_tree(*changed, name_);
  root_ = std::move(changed);
}

void DesignDocument::set_patches(const std::vector<Laminate>& laminates)
{
  auto changed = std::make_shared<Node>(*root_);
  Table& table = std::get<Table>(changed->value);
  const auto entry = std::find_if(table.begin(), table.end(), [](const Entry& e) { return e.name == "patch"; });
  if (entry == table.end())
    return;
  List kept;
  std::size_t number = 0;
  for (Node& patch : std::get<List>(entry->node.value))
    if (const Laminate& laminate = laminates.at(number++); !laminate.plies.empty())
    {
      for (Entry& key : std::get<Table>(patch.value))
        if (key.name == "plies")
          key.node = plies_node(laminate);
      kept.push_back(std::move(patch));
    }
  if (kept.empty())
    table.erase(entry);
  else
    entry->node.value = std::move(kept);
  check_tree(*changed, name_);
  root_ = std::move(changed);
}

std::string DesignDocument::text() const
{
  return toml_text(*root_);
}

double DesignDocument::number(std::string_view key) const
{
  const Key& declared = numeric_key(key);
  if (const Node* node = find_node(*root_, key))
    return *node->number();
  if (const std::optional<double> constant = library_number(key))
    return *constant / declared.unit.si;
  if (declared.default_number)
    return *declared.default_number;
  throw DesignError(message(name_, ": ", key, ": not given in the file, and its default is not a number (",
                            declared.default_text.empty() ? "none" : declared.default_text, ")"));
}

bool DesignDocument::is_body() const
{
  return find_node(*root_, "body") != nullptr;
}

std::vector<std::string> DesignDocument::numeric_keys() const
{
  std::vector<std::string> keys;
  add_numeric_keys(*root_, "", keys);
  return keys;
}

std::string DesignDocument::unit(std::string_view key) const
{
  return std::string(numeric_key(key).unit.name);
}

std::string DesignDocument::text(std::string_view key) const
{
  const std::size_t dot = key.rfind('.');
  return TableReader(*root_, name_, std::string(key.substr(0, dot))).text(key.substr(dot + 1));
}

std::string DesignDocument::place(std::string_view key) const
{
  if (const Node* node = find_node(*root_, key))
    return message(place_of(*node, name_), ": ", key, " = ", shown(*node));
  return message(name_, ": ", key);
}

SheetMaterial DesignDocument::material(std::string_view name) const
{
  return read_material_tree(*root_, name_, name);
}

Design DesignDocument::design() const
{
  return read_design_tree(*root_, name_, *files_);
}

LoadDesign DesignDocument::load() const
{
  return read_load_tree(*root_, name_, *files_);
}

BodyDesign DesignDocument::body(const Design& top, const Design& back) const
{
  return read_body_tree(*root_, name_, top, back);
}

BodyLoadDesign DesignDocument::body_load(const Design& top) const
{
  return read_body_load_tree(*root_, name_, top);
}

LayupDesign DesignDocument::layup() const
{
  return read_layup_tree(*root_, name_, *files_);
}

} // namespace plate
