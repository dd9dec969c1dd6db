// SPDX-License-Identifier: MPL-2.0
#include "pictures/svg_output.h"

#include <doctest/doctest.h>

using namespace plate;

TEST_CASE("Numbers of an SVG's surfaces and images are its own, in order of appearance")
{
  const std::string svg =
      R"(<g id="surface41"/><image id="image17"/><use xlink:href="#image17"/><use xlink:href="#surface41"/>)";
  CHECK(with_own_numbers(svg) ==
        R"(<g id="surface1"/><image id="image2"/><use xlink:href="#image2"/><use xlink:href="#surface1"/>)");
}

TEST_CASE("Searchable text is well-formed whatever the words are")
{
  const std::vector<PlacedText> texts = {{.words = "a<b & c>d\n", .anchor = {1.0, 2.0}, .width = 30.0, .style = {}}};
  const std::string svg = with_searchable_text("<svg></svg>", texts);
  CHECK(svg.find(">a&lt;b &amp; c&gt;d</text>") != std::string::npos);
  CHECK(svg.substr(svg.size() - 6) == "</svg>");
}

TEST_CASE("Words too long for their place end in an ellipsis, letters of more than one byte kept whole")
{
  CHECK(shortened("short", label_text, 200.0) == "short");
  const std::string cut =
      shortened("\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc\u00fc", label_text, 40.0);
  CHECK(text_width(cut, label_text) <= 40.0);
  REQUIRE(cut.size() > 5);
  CHECK(cut.substr(cut.size() - 3) == "\u2026");
  CHECK((cut.size() - 3) % 2 == 0);
}
