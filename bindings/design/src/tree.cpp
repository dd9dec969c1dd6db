// SPDX-License-Identifier: MPL-2.0
#include "tree.h"

#include "key_path.h"
#include "plain_text.h"

#include <array>
#include <charconv>
#include <cstddef>
#include <type_traits>

namespace plate
{
namespace
{

constexpr std::size_t max_shown = 60; // bytes of a list: a message stays on one line

std::string shown_list(const List& list)
{
  std::string out = "[";
  for (const Node& entry : list)
  {
    if (out.size() > 1)
      out += ", ";
    if (out.size() > max_shown)
      return out + "...]";
    out += shown(entry);
  }
  return out + "]";
}

} // namespace

const Node* find_entry(const Table& table, std::string_view name)
{
  for (const auto& [key, node] : table)
    if (key == name)
      return &node;
  return nullptr;
}

const Node* find_node(const Node& root, std::string_view path)
{
  const Node* node = &root;
  for (const std::string& part : split_path(path))
  {
    if (const Table* table = node->table())
      node = find_entry(*table, part);
    else if (const List* list = node->list(); list && is_entry_number(part) && part.size() < 7)
    {
      const std::size_t number = std::stoul(part);
      node = number >= 1 && number <= list->size() ? &(*list)[number - 1] : nullptr;
    }
    else
      return nullptr;
    if (!node)
      return nullptr;
  }
  return node;
}

std::string shown(double value)
{
  std::array<char, 32> buffer{};
  const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
  static_cast<void>(error); // 32 characters hold every double
  return {buffer.data(), end};
}

std::string shown(const Node& node)
{
  return std::visit(
      [](const auto& value) -> std::string
      {
        using T = std::decay_t<decltype(value)>;
        if constexpr (std::is_same_v<T, std::string>)
          return '"' + shortened(value) + '"';
        else if constexpr (std::is_same_v<T, double>)
          return shown(value);
        else if constexpr (std::is_same_v<T, bool>)
          return value ? "true" : "false";
        else if constexpr (std::is_same_v<T, List>)
          return shown_list(value);
        else
          return "a table";
      },
      node.value);
}

} // namespace plate
