// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace plate
{

struct Node;
struct Entry;
using List = std::vector<Node>;
using Table = std::vector<Entry>; ///< in the order of the file

/// A value of the design file with the place it came from.
struct Node
{
  static constexpr int command_line = 0; ///< line number of values given by --set
  static constexpr int computed = -1;    ///< line number of values a study put in

  std::variant<std::string, double, bool, List, Table> value;
  int line = command_line; ///< from 1

  [[nodiscard]] const Table* table() const { return std::get_if<Table>(&value); }
  [[nodiscard]] const List* list() const { return std::get_if<List>(&value); }
  [[nodiscard]] const std::string* text() const { return std::get_if<std::string>(&value); }
  [[nodiscard]] const double* number() const { return std::get_if<double>(&value); }
  [[nodiscard]] const bool* flag() const { return std::get_if<bool>(&value); }
};

/// A name and its value in a table. (A std::pair would need the whole Node too early for Clang 14.)
struct Entry
{
  std::string name;
  Node node;
};

/// The entry of a table; null if it has none of that name.
[[nodiscard]] const Node* find_entry(const Table& table, std::string_view name);

/// The value at a dotted path, list entries counted from 1; null if there is none.
[[nodiscard]] const Node* find_node(const Node& root, std::string_view path);

/// A value as a user would type it, shortened if long: 16, "carbon_ud", [1, 2], a table.
[[nodiscard]] std::string shown(const Node& node);

/// A number in the shortest form that reads back as the same double.
[[nodiscard]] std::string shown(double value);

/// A tree as TOML; lists, of tables too, in one line each.
/// @param root  a table
[[nodiscard]] std::string toml_text(const Node& root);

/// Parses TOML.
///
/// @param text  UTF-8
/// @param name  of the file, for messages
/// @throws DesignError with the line of the first fault
[[nodiscard]] Node parse_toml(std::string_view text, const std::string& name);

/// Parses the VALUE of --set: a TOML value, or else a bare word taken as text.
[[nodiscard]] Node parse_value(std::string_view text);

} // namespace plate
