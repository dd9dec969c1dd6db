// SPDX-License-Identifier: MPL-2.0
#include <plate/design/keys.h>

#include "plain_text.h"
#include "tree.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cstddef>

namespace plate
{
namespace
{

/// A number as one writes it in a design file: 405.0, 0.034.
std::string toml_number(double value)
{
  const std::string text = shown(value);
  return text.find_first_of(".e") == std::string::npos ? text + ".0" : text;
}

bool has_word(const Key& key, std::string_view word)
{
  return std::find(key.choices.begin(), key.choices.end(), word) != key.choices.end();
}

std::string_view table_of(std::string_view name)
{
  const std::size_t dot = name.rfind('.');
  return dot == std::string_view::npos ? std::string_view() : name.substr(0, dot);
}

} // namespace

std::string default_value(const Key& key)
{
  if (key.default_number)
    return toml_number(*key.default_number);
  if (key.kind == KeyKind::flag && (key.default_text == "true" || key.default_text == "false"))
    return std::string(key.default_text);
  return key.kind == KeyKind::choice && has_word(key, key.default_text) ? in_quotes(key.default_text) : std::string();
}

std::string example_value(const Key& key)
{
  if (!key.example.empty())
    return std::string(key.example);
  if (std::string value = default_value(key); !value.empty())
    return value;
  if (key.kind == KeyKind::choice)
    return in_quotes(key.choices.front());
  if (key.kind != KeyKind::choices)
    return {};
  std::string list;
  for (int i = 0; i < key.count; ++i)
    list += message(i == 0 ? "" : ", ", in_quotes(key.choices.front()));
  return "[" + list + "]";
}

std::vector<std::string_view> kinds_using(const Key& key)
{
  std::vector<std::string_view> kinds;
  for (std::string_view rest = key.only_with; !rest.empty();)
  {
    const std::size_t bar = rest.find('|');
    kinds.push_back(rest.substr(0, bar));
    rest = bar == std::string_view::npos ? std::string_view() : rest.substr(bar + 1);
  }
  return kinds;
}

const Key* kind_key(const Key& key)
{
  const std::vector<std::string_view> kinds = kinds_using(key);
  if (kinds.empty())
    return nullptr;
  for (const Key& other : design_keys())
    if (other.kind == KeyKind::choice && table_of(other.name) == table_of(key.name) && has_word(other, kinds.front()))
      return &other;
  return nullptr;
}

} // namespace plate
