// SPDX-License-Identifier: MPL-2.0
#include <plate/design/keys.h>

#include "edit_distance.h"
#include "key_path.h"

#include <plate/core/error.h>

#include <cstddef>

namespace plate
{
namespace
{

/// A key with its pattern taken apart once.
struct SplitKey
{
  const Key* key;
  std::vector<std::string> pattern;
};

std::vector<SplitKey> taken_apart(std::span<const Key> keys)
{
  std::vector<SplitKey> out;
  for (const Key& key : keys)
    out.push_back({&key, split_path(key.name)});
  return out;
}

const std::vector<SplitKey>& split_keys(FileKind kind)
{
  static const std::vector<SplitKey> design = taken_apart(design_keys());
  static const std::vector<SplitKey> match = taken_apart(match_keys());
  return kind == FileKind::match ? match : design;
}

bool part_fits(std::string_view pattern, std::string_view part)
{
  if (pattern == "*")
    return !part.empty();
  if (pattern == "[]")
    return is_entry_number(part);
  return pattern == part;
}

bool begins_with(const std::vector<std::string>& pattern, const std::vector<std::string>& path)
{
  if (pattern.size() < path.size())
    return false;
  for (std::size_t i = 0; i < path.size(); ++i)
    if (!part_fits(pattern[i], path[i]))
      return false;
  return true;
}

/// The pattern with the names and numbers of a path put in as far as it has them.
std::string filled_in(const std::vector<std::string>& pattern, const std::vector<std::string>& path)
{
  std::vector<std::string> parts = pattern;
  for (std::size_t i = 0; i < parts.size(); ++i)
  {
    if (parts[i] == "*")
      parts[i] = i < path.size() ? path[i] : "NAME";
    if (parts[i] == "[]")
      parts[i] = i < path.size() && is_entry_number(path[i]) ? path[i] : "1";
  }
  return join_path(parts);
}

std::string quoted_list(const std::vector<std::string_view>& words)
{
  std::string out;
  for (const std::string_view word : words)
    out += message(out.empty() ? "" : ", ", '"', word, '"');
  return out;
}

std::string range_in_words(const KeyRange& range)
{
  const bool low = range.low > -std::numeric_limits<double>::infinity();
  const bool high = range.high < std::numeric_limits<double>::infinity();
  std::string out;
  if (low)
    out += message(range.above ? ", greater than " : ", at least ", range.low);
  if (high)
    out += message(low ? " and " : ", ", range.below ? "less than " : "at most ", range.high);
  return out;
}

} // namespace

std::vector<std::string> split_path(std::string_view path)
{
  std::vector<std::string> parts;
  while (true)
  {
    const std::size_t dot = path.find('.');
    std::string_view part = path.substr(0, dot);
    const bool list = part.size() > 2 && part.substr(part.size() - 2) == "[]";
    if (list)
      part.remove_suffix(2);
    parts.emplace_back(part);
    if (list)
      parts.emplace_back("[]");
    if (dot == std::string_view::npos)
      return parts;
    path.remove_prefix(dot + 1);
  }
}

std::string join_path(const std::vector<std::string>& parts)
{
  std::string out;
  for (const std::string& part : parts)
  {
    if (!out.empty())
      out += '.';
    out += part;
  }
  return out;
}

bool KeyRange::contains(double value) const
{
  return (above ? value > low : value >= low) && (below ? value < high : value <= high);
}

const Key* find_key(std::string_view path, FileKind kind)
{
  const std::vector<std::string> parts = split_path(path);
  for (const SplitKey& candidate : split_keys(kind))
    if (candidate.pattern.size() == parts.size() && begins_with(candidate.pattern, parts))
      return candidate.key;
  return nullptr;
}

std::string allowed_values(const Key& key)
{
  const std::string unit = key.unit.name.empty() ? "" : message(" in ", key.unit.name);
  switch (key.kind)
  {
  case KeyKind::text:
    return message("a text in quotes on one line, without control characters, at most ", max_text_bytes, " bytes");
  case KeyKind::choice:
    return message("one of ", quoted_list(key.choices));
  case KeyKind::flag:
    return "true or false";
  case KeyKind::number:
    return message("a number", unit, range_in_words(key.range));
  case KeyKind::numbers:
    return message("a list of ", key.count == 0 ? "at least one number" : message(key.count, " numbers"), unit,
                   range_in_words(key.range), key.choices.empty() ? "" : ", or " + quoted_list(key.choices));
  case KeyKind::texts:
    return "a list of at least one text in quotes";
  case KeyKind::points:
    return message("a list of at least ", key.count, " pairs of numbers", unit, range_in_words(key.range),
                   ", e.g. [[0, 0], [30, 0], [0, 20]]");
  case KeyKind::choices:
    return message("a list of ", key.count, " words, each one of ", quoted_list(key.choices));
  }
  return {};
}

bool is_table_path(std::string_view path, FileKind kind)
{
  const std::vector<std::string> parts = split_path(path);
  for (const SplitKey& candidate : split_keys(kind))
    if (candidate.pattern.size() > parts.size() && begins_with(candidate.pattern, parts))
      return true;
  return false;
}

bool is_table_list_path(std::string_view path, FileKind kind)
{
  const std::vector<std::string> parts = split_path(path);
  for (const SplitKey& candidate : split_keys(kind))
    if (candidate.pattern.size() > parts.size() && begins_with(candidate.pattern, parts))
      return candidate.pattern[parts.size()] == "[]";
  return false;
}

std::vector<std::string> names_in_table(std::string_view path, FileKind kind)
{
  const std::vector<std::string> parts = path.empty() ? std::vector<std::string>() : split_path(path);
  std::vector<std::string> names;
  for (const SplitKey& candidate : split_keys(kind))
  {
    if (candidate.pattern.size() <= parts.size() || !begins_with(candidate.pattern, parts))
      continue;
    const std::string& name = candidate.pattern[parts.size()];
    if (std::find(names.begin(), names.end(), name) == names.end())
      names.push_back(name);
  }
  return names;
}

std::string nearest_key(std::string_view path, FileKind kind)
{
  const std::vector<std::string> parts = split_path(path);
  std::string nearest;
  int least = std::numeric_limits<int>::max();
  const auto offer = [&](const std::string& name, int distance)
  {
    if (distance < least)
    {
      least = distance;
      nearest = name;
    }
  };
  for (const SplitKey& candidate : split_keys(kind))
  {
    const std::string name = filled_in(candidate.pattern, parts);
    // A key that only stands in the wrong table is one step away; it loses against a slip of one letter in its place.
    const int moved = slip_distance(parts.back(), candidate.pattern.back());
    offer(name, std::min(2 * slip_distance(path, name), 2 * moved + 3));
    if (candidate.pattern.size() > parts.size()) // a mistyped table
    {
      const std::vector<std::string> table(candidate.pattern.begin(),
                                           candidate.pattern.begin() + static_cast<std::ptrdiff_t>(parts.size()));
      const std::string table_name = filled_in(table, parts);
      offer(table_name, 2 * slip_distance(path, table_name));
    }
  }
  return nearest;
}

std::string nearest_word(std::string_view word, std::span<const std::string> words)
{
  std::string nearest;
  int least = std::numeric_limits<int>::max();
  for (const std::string& candidate : words)
  {
    const int distance = slip_distance(word, candidate);
    if (distance < least)
    {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}

} // namespace plate
