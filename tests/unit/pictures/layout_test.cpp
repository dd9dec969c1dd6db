// SPDX-License-Identifier: MPL-2.0
#include "pictures/contour_spacing.h"
#include "pictures/sheet_grid.h"
#include "pictures/svg_output.h"

#include <doctest/doctest.h>

#include <numbers>

using namespace plate;

TEST_CASE("A sheet holds any number of modes, plates not too small and the page about as wide as others")
{
  for (std::size_t count = 1; count <= 60; ++count)
  {
    CAPTURE(count);
    const SheetGrid grid = fit_grid(count, {.aspect = 0.58, .around = {14.0, 56.0}, .least_width = 75.0});
    CHECK(grid.columns * grid.rows >= count);
    CHECK(grid.columns * (grid.rows - 1) < count); // no empty row
    CHECK(grid.plate[0] / grid.plate[1] == doctest::Approx(0.58));
    CHECK(grid.plate[1] >= 100.0);
    CHECK(grid.cell[0] >= grid.plate[0] + 14.0 - 1e-9);
    CHECK(grid.cell[0] >= 75.0);
    CHECK(grid.size()[0] <= 780.0 + 1e-9);
    CHECK(grid.corner(count - 1)[1] + grid.cell[1] <= grid.size()[1] + 1e-9);
  }
}

TEST_CASE("A sheet of usual numbers of modes has hardly any gap")
{
  for (const std::size_t count : {5U, 8U, 10U, 12U, 20U, 60U})
  {
    CAPTURE(count);
    const SheetGrid grid = fit_grid(count, {.aspect = 0.58, .around = {14.0, 56.0}, .least_width = 75.0});
    CHECK(grid.columns * grid.rows - count <= 1);
  }
}

TEST_CASE("Contours that run together are left out where they do, and only there")
{
  // Three levels: the second comes within 1 of the first for x < 50 and is 10 away from both beyond; the third is
  // alone.
  const std::vector<std::vector<Polyline>> levels = {
      {{.points = {{0.0, 0.0}, {100.0, 0.0}}}},
      {{.points = {{0.0, 1.0}, {50.0, 1.0}, {50.0, 10.0}, {100.0, 10.0}}}},
      {{.points = {{0.0, 20.0}, {100.0, 20.0}}}}};
  const std::vector<std::vector<Polyline>> left = without_crowds(levels, 2.0);
  REQUIRE(left.size() == 3);
  REQUIRE(left[0].size() == 1);
  CHECK(left[0][0].points.front()[0] == doctest::Approx(51.5).epsilon(0.03));
  CHECK(length(left[0][0]) == doctest::Approx(48.0).epsilon(0.05));
  REQUIRE(left[1].size() == 1);
  CHECK(left[1][0].points.front()[1] >= 2.0);
  CHECK(length(left[1][0]) == doctest::Approx(58.0).epsilon(0.05));
  REQUIRE(left[2].size() == 1);
  CHECK(length(left[2][0]) == doctest::Approx(100.0));
}

TEST_CASE("A closed contour crowded on one side stays in one piece around the other")
{
  Polyline circle{.points = {}, .closed = true};
  for (int i = 0; i < 360; ++i) // begins at the free side
    circle.points.emplace_back(50.0 * std::cos(i * std::numbers::pi / 180.0),
                               50.0 * std::sin(i * std::numbers::pi / 180.0));
  const Polyline wall{.points = {{-51.0, -100.0}, {-51.0, 100.0}}};
  const std::vector<std::vector<Polyline>> left = without_crowds({{circle}, {wall}}, 3.0);
  REQUIRE(left[0].size() == 1);
  CHECK_FALSE(left[0][0].closed);
  // Nearer than 3 to the wall: x < -48, an arc of 2 acos(48/50).
  const double crowded = 2.0 * std::acos(48.0 / 50.0) * 50.0;
  CHECK(length(left[0][0]) == doctest::Approx(2.0 * std::numbers::pi * 50.0 - crowded).epsilon(0.03));
}

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
