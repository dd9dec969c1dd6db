// SPDX-License-Identifier: MPL-2.0
#include "writer.h"

#include "../key_path.h"

#include <plate/core/error.h>
#include <plate/design/keys.h>

#include <algorithm>
#include <cstddef>
#include <sstream>

namespace plate
{
namespace
{

constexpr std::size_t comment_column = 26;
constexpr std::size_t line_width = 120;

/// The part of a key's name up to its table, "soundhole[]" of "soundhole[].length"; empty for "title".
std::string table_pattern(const Key& key)
{
  const std::string_view name = key.name;
  if (name.substr(0, 11) == "material.*.")
    return "material.*";
  const std::size_t dot = name.find('.');
  return std::string(dot == std::string_view::npos ? std::string_view() : name.substr(0, dot));
}

/// The words a key allows, unless its help explains each of them.
std::string choices_in_words(const Key& key)
{
  std::string words;
  bool explained = true;
  for (const std::string_view word : key.choices)
  {
    words += message(words.empty() ? "" : ", ", word);
    explained = explained && key.help.find(word) != std::string_view::npos;
  }
  return explained ? std::string() : " (" + words + ")";
}

std::string comment_of(const Key& key, const StarterLine& line)
{
  std::string text = key.unit.name.empty() ? std::string() : message("[", key.unit.name, "] ");
  text += key.help;
  if (const std::string words = choices_in_words(key); !words.empty())
    text.insert(text.size() - 1, words);
  if (!line.note.empty())
    text += message(" ", line.note, ".");
  else if (line.optional && default_value(key).empty() && !key.default_text.empty() && key.default_text != "none")
    text += message(" Without it: ", key.default_text, ".");
  return text;
}

/// A text over as many comment lines as it takes.
std::string wrapped(const std::string& text)
{
  std::istringstream words(text);
  std::string out;
  std::string line = "#";
  for (std::string word; words >> word;)
  {
    if (line.size() + 1 + word.size() > line_width)
    {
      out += line + "\n";
      line = "#";
    }
    line += " " + word;
  }
  return out + line + "\n";
}

std::string with_comment(std::string text, const std::string& comment)
{
  if (std::max(text.size() + 1, comment_column) + 2 + comment.size() > line_width)
    return wrapped(comment) + text + "\n";
  text.resize(std::max(text.size() + 1, comment_column), ' ');
  return text + "# " + comment + "\n";
}

class StarterWriter
{
public:
  StarterWriter(const std::vector<StarterLine>& lines, const std::string& plies) : lines_(lines), plies_(plies) {}

  [[nodiscard]] std::string text() const
  {
    std::string out;
    for (const std::string& table : table_patterns())
    {
      const std::vector<std::string> entries = entries_of(table);
      if (table.empty())
        out += keys_of(table, "", false);
      else if (entries.empty() && table != "material.*")
        out += "\n#" + header(table) + "\n" + keys_of(table, "", true);
      for (const std::string& entry : entries)
        out += "\n" + header(table == "material.*" ? entry : table) + "\n" + keys_of(table, entry, false);
    }
    return out;
  }

private:
  static std::vector<std::string> table_patterns()
  {
    std::vector<std::string> tables;
    for (const Key& key : design_keys())
      if (const std::string table = table_pattern(key); std::find(tables.begin(), tables.end(), table) == tables.end())
        tables.push_back(table);
    return tables;
  }

  static std::string header(const std::string& table)
  {
    const bool list = table.ends_with("[]");
    return list ? message("[[", table.substr(0, table.size() - 2), "]]") : message("[", table, "]");
  }

  /// Paths of the tables of that pattern that have lines, "material.spruce" or "soundhole.1".
  [[nodiscard]] std::vector<std::string> entries_of(const std::string& table) const
  {
    std::vector<std::string> entries;
    for (const StarterLine& line : lines_)
    {
      const std::string entry = line.key.substr(0, line.key.rfind('.'));
      if (const Key* key = find_key(line.key); table.empty() || !key || table_pattern(*key) != table)
        continue;
      if (std::find(entries.begin(), entries.end(), entry) == entries.end())
        entries.push_back(entry);
    }
    return entries;
  }

  [[nodiscard]] const StarterLine* line_of(const Key& key, const std::string& entry) const
  {
    const auto found = std::find_if(lines_.begin(), lines_.end(),
                                    [&](const StarterLine& line) {
                                      return find_key(line.key) == &key && line.key.substr(0, entry.size()) == entry;
                                    });
    return found == lines_.end() ? nullptr : &*found;
  }

  /// Whether the kind of the table, as given or else as it is by default, uses the key.
  [[nodiscard]] bool is_used(const Key& key, const std::string& entry) const
  {
    const Key* kind = kind_key(key);
    if (!kind)
      return true;
    const StarterLine* line = line_of(*kind, entry);
    const std::string value = line ? line->value : example_value(*kind);
    const std::vector<std::string_view> kinds = kinds_using(key);
    return std::any_of(kinds.begin(), kinds.end(),
                       [&](std::string_view word) { return value == message('"', word, '"'); });
  }

  [[nodiscard]] std::string keys_of(const std::string& table, const std::string& entry, bool all_optional) const
  {
    std::string out;
    std::string last_list;
    for (const Key& key : design_keys())
    {
      if (table_pattern(key) != table || !is_used(key, entry))
        continue;
      const std::string name(key.name.substr(table.empty() ? 0 : table.size() + 1));
      if (const std::size_t list = name.find("[]."); list == std::string::npos)
        out += key_text(key, name, entry, all_optional);
      else if (name.substr(0, list) != last_list)
      {
        last_list = name.substr(0, list);
        out += list_text(table, last_list);
      }
    }
    return out;
  }

  [[nodiscard]] std::string key_text(const Key& key, const std::string& name, const std::string& entry,
                                     bool all_optional) const
  {
    const StarterLine* given = all_optional ? nullptr : line_of(key, entry);
    if (!given && entry.substr(0, 9) == "material.")
      return {};
    const StarterLine line = given ? *given : StarterLine{entry, example_value(key), {}, true};
    return with_comment(message(line.optional ? "#" : "", name, " = ", line.value), comment_of(key, line));
  }

  /// A list of tables inside a table.
  [[nodiscard]] std::string list_text(const std::string& table, const std::string& list) const
  {
    if (table == "layup" && !plies_.empty())
      return "# Plies from the inside (air) to the outside (mould).\n" + list + " = " + plies_ + "\n";
    std::string entry;
    for (const Key& key : design_keys())
      if (const std::string stem = message(table, ".", list, "[]."); key.name.substr(0, stem.size()) == stem)
        if (!key.example.empty() && key.default_text != "none")
          entry += message(entry.empty() ? "" : ", ", key.name.substr(stem.size()), " = ", key.example);
    return message("#", list, " = [{ ", entry, " }]\n");
  }

  const std::vector<StarterLine>& lines_;
  const std::string& plies_;
};

} // namespace

std::string write_starter(const std::vector<StarterLine>& lines, const std::string& plies)
{
  return StarterWriter(lines, plies).text();
}

} // namespace plate
