// SPDX-License-Identifier: MPL-2.0
#include <plate/design/design_document.h>
#include <plate/design/keys.h>

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <set>
#include <string>
#include <vector>

using namespace plate;

TEST_CASE("each key is declared once, with help, and is found by its own name")
{
  std::set<std::string_view> names;
  for (const Key& key : design_keys())
  {
    CAPTURE(key.name);
    CHECK(names.insert(key.name).second);
    CHECK_FALSE(key.help.empty());
    std::string path(key.name);
    for (std::size_t list = path.find("[]"); list != std::string::npos; list = path.find("[]"))
      path.replace(list, 2, ".3");
    if (const std::size_t any = path.find('*'); any != std::string::npos)
      path.replace(any, 1, "my_wood");
    CHECK(find_key(path) == &key);
    CHECK(is_table_path(path) == false);
  }
}

TEST_CASE("declarations fit their kind")
{
  for (const Key& key : design_keys())
  {
    CAPTURE(key.name);
    const bool words = key.kind == KeyKind::choice || key.kind == KeyKind::choices;
    const bool list = key.kind == KeyKind::numbers || key.kind == KeyKind::points || key.kind == KeyKind::choices;
    CHECK(key.choices.empty() != words);
    CHECK((key.count > 0) == list);
    if (key.default_number)
    {
      CHECK(key.kind == KeyKind::number);
      CHECK(key.range.contains(*key.default_number));
    }
    if (key.kind == KeyKind::number)
      CHECK(key.range.low < key.range.high);
  }
}

namespace
{

/// A file that holds nothing but one key: {a.b[].c, v} gives a = { b = [{ c = v }] }.
std::string only_key(std::string_view name, const std::string& value)
{
  const std::size_t dot = name.find('.');
  std::string part(name.substr(0, dot));
  if (dot == std::string_view::npos)
    return part + " = " + value;
  if (part == "*")
    part = "my_wood";
  const std::string inner = "{ " + only_key(name.substr(dot + 1), value) + " }";
  if (part.size() > 2 && part.substr(part.size() - 2) == "[]")
    return part.substr(0, part.size() - 2) + " = [" + inner + "]";
  return part + " = " + inner;
}

} // namespace

TEST_CASE("each key has an example that the key allows, and a default that it allows")
{
  for (const Key& key : design_keys())
  {
    CAPTURE(key.name);
    CHECK_FALSE(example_value(key).empty());
    CHECK_NOTHROW(static_cast<void>(DesignDocument::from_text(only_key(key.name, example_value(key)), "example")));
    if (const std::string value = default_value(key); !value.empty())
      CHECK_NOTHROW(static_cast<void>(DesignDocument::from_text(only_key(key.name, value), "default")));
  }
}

TEST_CASE("values are written as in a file")
{
  CHECK(default_value(*find_key("bar.end_height")) == "3.5");
  CHECK(default_value(*find_key("layup.scale")) == "1.0");
  CHECK(default_value(*find_key("arching.kind")) == "\"flat\"");
  CHECK(default_value(*find_key("soundhole.1.mirror")) == "true");
  CHECK(default_value(*find_key("outline.length")).empty());
  CHECK(example_value(*find_key("support.edges")) == R"(["free", "free", "free", "free"])");
}

TEST_CASE("a key that only some kinds use knows the key that tells the kind")
{
  CHECK(kind_key(*find_key("outline.width")) == find_key("outline.kind"));
  CHECK(kind_key(*find_key("patch.1.axes")) == find_key("patch.1.shape"));
  CHECK(kind_key(*find_key("outline.kind")) == nullptr);
  CHECK(kinds_using(*find_key("outline.width")) == std::vector<std::string_view>{"rectangle", "ellipse"});
  CHECK(kinds_using(*find_key("outline.kind")).empty());
  for (const Key& key : design_keys())
    CHECK((kind_key(key) == nullptr) == key.only_with.empty());
}

TEST_CASE("units convert to SI")
{
  // Definitions of the units: International System of Units, 9th edition (BIPM 2019).
  CHECK(find_key("outline.length")->unit.si == 1e-3);
  CHECK(find_key("material.spruce.E1")->unit.si == 1e9);
  CHECK(find_key("material.spruce.density")->unit.si == 1.0);
  CHECK(find_key("material.spruce.loss")->unit.si == 0.01);
  CHECK(find_key("layup.angle")->unit.si == doctest::Approx(std::numbers::pi / 180.0).epsilon(1e-15));
}

TEST_CASE("a range knows open and closed ends and refuses NaN")
{
  const KeyRange open{.low = 0.0, .high = 1.0, .above = true, .below = true};
  CHECK_FALSE(open.contains(0.0));
  CHECK(open.contains(0.5));
  CHECK_FALSE(open.contains(1.0));
  const KeyRange closed{.low = 0.0, .high = 1.0};
  CHECK(closed.contains(0.0));
  CHECK(closed.contains(1.0));
  CHECK_FALSE(closed.contains(-1e-300));
  CHECK_FALSE(closed.contains(std::nan("")));
  CHECK_FALSE(KeyRange().contains(std::nan("")));
  CHECK(KeyRange().contains(std::numeric_limits<double>::max()));
}

TEST_CASE("the nearest key is in the same table before it is in another")
{
  CHECK(nearest_key("arching.heigth") == "arching.height");
  CHECK(nearest_key("soundhole.2.lenght") == "soundhole.2.length");
  CHECK(nearest_key("material.oak.densty") == "material.oak.density");
  CHECK(nearest_key("layup.plies.4.tickness") == "layup.plies.4.thickness");
  CHECK(nearest_key("arching.lower_bout") == "outline.lower_bout");
  CHECK(nearest_key("titel") == "title");
}

TEST_CASE("what a key allows is said in words")
{
  CHECK(allowed_values(*find_key("layup.scale")) == "a number, at least 0.01 and at most 100");
  CHECK(allowed_values(*find_key("soundhole.1.where")) == "a list of 2 numbers in mm, at least -3000 and at most 3000");
  CHECK(allowed_values(*find_key("layup.grain")) == "one of \"carved\", \"follows\"");
}
