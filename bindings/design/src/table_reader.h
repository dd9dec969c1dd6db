// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "tree.h"

#include <plate/design/keys.h>

#include <Eigen/Core>

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// One table of a checked design, read key by key into SI. Defaults and units come from the declarations of the keys.
///
/// A missing table reads as an empty one, so that defaults need no second way.
class TableReader
{
public:
  /// @param root,file  must outlive the reader
  TableReader(const Node& root, const std::string& file, std::string path, FileKind kind = FileKind::design);

  [[nodiscard]] bool exists() const { return table_ != nullptr; }
  [[nodiscard]] bool has(std::string_view name) const { return find(name) != nullptr; }
  [[nodiscard]] const std::string& path() const { return path_; }

  /// A number in SI; its default if the key is left out. @throws DesignError if it has no default.
  [[nodiscard]] double number(std::string_view name) const;
  [[nodiscard]] std::optional<double> optional_number(std::string_view name) const; ///< in SI; nothing if left out
  [[nodiscard]] std::vector<double> numbers(std::string_view name) const;           ///< in SI
  [[nodiscard]] std::vector<Eigen::Vector2d> points(std::string_view name) const;   ///< in SI
  [[nodiscard]] std::string text(std::string_view name) const;
  [[nodiscard]] bool is_word(std::string_view name) const; ///< given, and a word where a list might stand
  [[nodiscard]] std::string word(std::string_view name, std::string_view fallback) const;
  [[nodiscard]] std::vector<std::string> words(std::string_view name) const;
  [[nodiscard]] bool flag(std::string_view name, bool fallback) const;

  [[nodiscard]] TableReader table(std::string_view name) const;
  [[nodiscard]] std::vector<TableReader> tables(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> names() const; ///< of its entries, in the order of the file

  /// Checks that every key given is used with this kind of the table.
  /// @param selector  name of the key that says which kind
  void check_kind(std::string_view kind, std::string_view selector = "kind") const;

  /// The error about one key: place, key, value if there is one, then what is wrong.
  [[noreturn]] void fail(std::string_view name, const std::string& what) const;
  /// The error about the table as a whole.
  [[noreturn]] void fail_here(const std::string& what) const;

private:
  TableReader(const Node& root, const std::string& file, std::string path, FileKind kind, const Node* node);
  [[nodiscard]] const Node* find(std::string_view name) const;
  [[nodiscard]] const Node& required(std::string_view name) const;
  [[nodiscard]] std::string key_path(std::string_view name) const;
  [[nodiscard]] const Key& key(std::string_view name) const;

  const Node& root_;
  const std::string& file_;
  std::string path_;
  FileKind kind_;
  const Node* table_;
};

} // namespace plate
