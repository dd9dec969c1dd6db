// SPDX-License-Identifier: MPL-2.0
#include "design_schema.h"

#include <plate/core/error.h>
#include <plate/design/keys.h>
#include <plate/materials/library.h>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;

// Stand for any name of a material in the paths below.
constexpr const char* new_material = "NEW";
constexpr const char* any_name = "^[A-Za-z0-9_-]+$";

std::string below(const std::string& path, const std::string& name)
{
  return path.empty() ? name : path + "." + name;
}

Json words(const std::vector<std::string_view>& choices)
{
  Json list = Json::array();
  for (const std::string_view word : choices)
    list.push_back(word);
  return list;
}

Json number_schema(const KeyRange& range)
{
  Json schema = {{"type", "number"}};
  if (std::isfinite(range.low))
    schema[range.above ? "exclusiveMinimum" : "minimum"] = range.low;
  if (std::isfinite(range.high))
    schema[range.below ? "exclusiveMaximum" : "maximum"] = range.high;
  return schema;
}

Json list_schema(const Json& entry, int least, int most)
{
  return {{"type", "array"}, {"items", entry}, {"minItems", least}, {"maxItems", most}};
}

/// A list of numbers, of any length where the key has none, or a word in its place.
Json numbers_schema(const Key& key)
{
  if (key.count > 0)
    return list_schema(number_schema(key.range), key.count, key.count);
  Json list = {{"type", "array"}, {"items", number_schema(key.range)}, {"minItems", 1}};
  return key.choices.empty() ? list : Json{{"anyOf", {list, {{"enum", words(key.choices)}}}}};
}

Json value_schema(const Key& key)
{
  switch (key.kind)
  {
  case KeyKind::text:
    return {{"type", "string"}, {"minLength", 1}};
  case KeyKind::choice:
    return {{"enum", words(key.choices)}};
  case KeyKind::flag:
    return {{"type", "boolean"}};
  case KeyKind::number:
    return number_schema(key.range);
  case KeyKind::numbers:
    return numbers_schema(key);
  case KeyKind::texts:
    return {{"type", "array"}, {"items", {{"type", "string"}, {"minLength", 1}}}, {"minItems", 1}};
  case KeyKind::points:
    return {{"type", "array"}, {"items", list_schema(number_schema(key.range), 2, 2)}, {"minItems", key.count}};
  case KeyKind::choices:
    return list_schema({{"enum", words(key.choices)}}, key.count, key.count);
  }
  return {};
}

Json key_schema(const Key& key)
{
  Json schema = value_schema(key);
  std::string help = key.unit.name.empty() ? std::string() : message("[", key.unit.name, "] ");
  help += key.help;
  if (const std::string value = default_value(key); !value.empty())
    schema["default"] = Json::parse(value); // our numbers, words and lists are written alike in TOML and JSON
  else if (!key.default_text.empty())
    help += message(" Default: ", key.default_text, ".");
  schema["description"] = help;
  schema["examples"] = Json::array({Json::parse(example_value(key))});
  return schema;
}

bool must_be_given(const Key& key)
{
  return !key.default_number && key.default_text.empty();
}

std::string last_name(const Key& key)
{
  return std::string(key.name.substr(key.name.rfind('.') + 1));
}

/// What a key asks of the kind of its table: one that uses it.
Json kind_wanted(const Key& key, const Key& kind)
{
  const std::vector<std::string_view> kinds = kinds_using(key);
  const bool by_default = std::find(kinds.begin(), kinds.end(), kind.default_text) != kinds.end();
  Json wanted = {{"properties", {{last_name(kind), {{"enum", words(kinds)}}}}}};
  if (!by_default)
    wanted["required"] = Json::array({last_name(kind)});
  return wanted;
}

void add_rules(Json& schema, const Key& key, bool built_in)
{
  const std::string name = last_name(key);
  if (const Key* kind = kind_key(key))
  {
    schema["dependentSchemas"][name] = kind_wanted(key, *kind);
    if (must_be_given(key))
      schema["allOf"].push_back({{"if", kind_wanted(key, *kind)}, {"then", {{"required", Json::array({name})}}}});
  }
  else if (must_be_given(key) && !built_in)
    schema["required"].push_back(name);
}

Json table_schema(const std::string& path, FileKind kind, bool built_in = false);

/// Materials: built-in ones come with constants, new ones must have them.
Json materials_schema(const std::string& path)
{
  Json schema = {{"type", "object"}, {"propertyNames", {{"pattern", any_name}}}};
  for (const LibraryMaterial& entry : material_library())
    schema["properties"][entry.material.name] = {{"$ref", "#/$defs/built_in_material"}};
  schema["additionalProperties"] = table_schema(below(path, new_material), FileKind::design);
  return schema;
}

Json entry_schema(const std::string& path, FileKind kind)
{
  if (is_table_list_path(path, kind))
    return {{"type", "array"}, {"items", table_schema(below(path, "1"), kind)}};
  return table_schema(path, kind);
}

Json table_schema(const std::string& path, FileKind kind, bool built_in)
{
  const std::vector<std::string> names = names_in_table(path, kind);
  if (names.front() == "*")
  {
    const Key* key = find_key(below(path, new_material), kind);
    return key ? Json{{"type", "object"}, {"additionalProperties", key_schema(*key)}} : materials_schema(path);
  }
  Json schema = {{"type", "object"}, {"additionalProperties", false}};
  for (const std::string& name : names)
  {
    const std::string child = below(path, name);
    const Key* key = find_key(child, kind);
    schema["properties"][name] = key ? key_schema(*key) : entry_schema(child, kind);
    if (key)
      add_rules(schema, *key, built_in);
  }
  return schema;
}

} // namespace

std::string design_schema()
{
  Json schema = {
      {"$schema", "https://json-schema.org/draft/2020-12/schema"},
      {"title", "libplate design file"},
      {"description", "A first check while writing; plate checks the rest, above all what belongs together."}};
  schema.update(table_schema("", FileKind::design));
  schema["anyOf"] = {{{"required", {"outline", "layup"}}}, {{"required", {"body"}}}};
  schema["$defs"]["built_in_material"] = table_schema(message("material.", new_material), FileKind::design, true);
  return schema.dump(2) + "\n";
}

std::string match_schema()
{
  Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                 {"title", "libplate match problem"},
                 {"description", "A first check while writing; plate match checks the rest."}};
  schema.update(table_schema("", FileKind::match));
  schema["properties"]["free"] = {
      {"type", "object"},
      {"description", "Keys of the start design that may change, each with its least and greatest value."}};
  schema["required"] = {"start", "available"};
  schema["oneOf"] = {{{"required", {"reference"}}}, {{"required", {"measured"}}}};
  return schema.dump(2) + "\n";
}

} // namespace plate
