// SPDX-License-Identifier: MPL-2.0
#include "design_schema.h"
#include "reference_page.h"
#include "run_plate.h"

#include <plate/design/keys.h>
#include <plate/materials/library.h>

#include <doctest/doctest.h>

#include <string>

using namespace plate;
using test::bytes_of;
using test::run_plate;

namespace
{

constexpr const char* remedy = "write them anew: cmake --build --preset release --target update_reference";

bool holds(const std::string& text, const std::string& part)
{
  return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("the reference page and the schemas in the repository are those of the program")
{
  INFO(remedy);
  const bool page_is_current = bytes_of(BINDINGS_DIR "/REFERENCE.md") == reference_page();
  CHECK(page_is_current);
  const bool schema_is_current = bytes_of(BINDINGS_DIR "/design.schema.json") == design_schema();
  CHECK(schema_is_current);
  const bool match_schema_is_current = bytes_of(BINDINGS_DIR "/match.schema.json") == match_schema();
  CHECK(match_schema_is_current);
}

TEST_CASE(
    "the reference page has every key with its help, every material with its source, every command with an example")
{
  const std::string page = reference_page();
  for (const Key& key : design_keys())
  {
    CAPTURE(key.name);
    CHECK(holds(page, "| `" + std::string(key.name.substr(key.name.rfind('.') + 1)) + "`"));
    CHECK(holds(page, std::string(key.help)));
  }
  for (const LibraryMaterial& entry : material_library())
  {
    CAPTURE(entry.material.name);
    CHECK(holds(page, "| `" + entry.material.name + "` |"));
    CHECK(holds(page, std::string(entry.source)));
  }
  for (const char* command : {"start", "modes", "laminate", "sweep", "validate"})
  {
    CHECK(holds(page, std::string("### `plate ") + command + "`"));
    CHECK(holds(page, std::string("```\nplate ") + command + " "));
  }
  for (const char* option : {"--family NAME", "--set KEY=VALUE", "--threads N in [1 - 256]", "--help, -h"})
    CHECK(holds(page, std::string("| `") + option + "` |"));
}

TEST_CASE("help lists all commands in groups, each with an example")
{
  const std::string help = run_plate({"--help"}).out;
  for (const char* part : {"One plate:", "Studies:", "\n  plate start ", "\n  plate modes ", "\n  plate laminate ",
                           "\n  plate sweep ", "Trust:", "\n  plate validate "})
    CHECK(holds(help, part));
}
