// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// What a key of the design file holds.
enum class KeyKind
{
  text,
  choice, ///< one of Key::choices
  flag,   ///< true or false
  number,
  numbers, ///< a list of Key::count numbers, of at least one where it is 0; or one of Key::choices in its place
  points,  ///< a list of pairs of numbers, at least Key::count of them
  choices, ///< a list of Key::count words, each one of Key::choices
  texts    ///< a list of at least one text
};

inline constexpr std::size_t max_text_bytes = 4000; ///< of a text key; a laminate code is the longest

/// A unit of the trade and its value in SI.
struct KeyUnit
{
  std::string_view name; ///< as shown, e.g. "mm"; empty for pure numbers
  double si;             ///< SI value of one unit
};

/// Allowed interval of a number, in the unit of the key.
struct KeyRange
{
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
  bool above = false; ///< the lower limit itself is not allowed
  bool below = false; ///< the upper limit itself is not allowed

  [[nodiscard]] bool contains(double value) const; ///< false for NaN
};

/// One key of the design file. Each key is declared once, in src/keys; reader, messages, --set and pages use that row.
struct Key
{
  std::string_view name; ///< dotted; `*` stands for any name (of a material), `[]` for any entry of a list
  KeyKind kind;
  std::string_view example = {}; ///< a value as in a file; may be left out where the default is a value or a word
  KeyUnit unit = {"", 1.0};
  KeyRange range = {};
  int count = 0;                              ///< length of a list
  std::vector<std::string_view> choices = {}; ///< words allowed
  std::string_view only_with = {};            ///< kinds (shapes) of its table that use the key, "f|slot"; empty for all
  std::optional<double> default_number = {};  ///< in the unit of the key
  std::string_view default_text = {};         ///< default in words or a word; empty if the key must be given
  std::string_view help = {};
};

/// All keys of design files, grouped by table in the order in which a file is usually written.
[[nodiscard]] std::span<const Key> design_keys();

/// All keys of match problems, in such an order. Beside them a problem has the table [free], whose entries are keys of
/// the design.
[[nodiscard]] std::span<const Key> match_keys();

/// Files that have keys.
enum class FileKind
{
  design,
  match
};
[[nodiscard]] std::span<const Key> keys_of(FileKind kind);

/// The key whose pattern fits a dotted path such as "soundhole.2.where" or "material.spruce.E1"; null if none does.
[[nodiscard]] const Key* find_key(std::string_view path, FileKind kind = FileKind::design);

/// What a key allows, for messages and pages: "a number in mm, greater than 0 and at most 400".
[[nodiscard]] std::string allowed_values(const Key& key);

/// The default as a value of the file, e.g. `3.5` or `"free"`; empty if there is none or if it is one in words.
[[nodiscard]] std::string default_value(const Key& key);

/// A value of the key as it may stand in a file, to show how it is written.
[[nodiscard]] std::string example_value(const Key& key);

/// The key of the same table that says which kind (shape) of it is meant; null for keys that any kind uses.
[[nodiscard]] const Key* kind_key(const Key& key);

/// The kinds that use the key, Key::only_with taken apart; empty for all.
[[nodiscard]] std::vector<std::string_view> kinds_using(const Key& key);

/// Whether some key's pattern lies inside the table or list of that path, e.g. "layup.ply", "soundhole", "soundhole.1".
[[nodiscard]] bool is_table_path(std::string_view path, FileKind kind = FileKind::design);

/// Whether the path is a list of tables, e.g. "soundhole", "layup.plies".
[[nodiscard]] bool is_table_list_path(std::string_view path, FileKind kind = FileKind::design);

/// Names that may stand directly in the table of that path, in the order of the keys.
[[nodiscard]] std::vector<std::string> names_in_table(std::string_view path, FileKind kind = FileKind::design);

/// The known key nearest to a mistyped one by edit distance, with the names and numbers of the path in place of the
/// pattern's `*` and `[]`. A key of the same table wins a tie.
[[nodiscard]] std::string nearest_key(std::string_view path, FileKind kind = FileKind::design);

/// The word of a list nearest to a mistyped one by edit distance; empty for an empty list.
[[nodiscard]] std::string nearest_word(std::string_view word, std::span<const std::string> words);

} // namespace plate
