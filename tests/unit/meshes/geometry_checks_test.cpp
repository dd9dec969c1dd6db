// SPDX-License-Identifier: MPL-2.0
#include "viola.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <string>

using namespace plate;

namespace
{

/// Text of the refusal; empty if the geometry passes.
std::string refusal(const PlateGeometry& geometry)
{
  try
  {
    check_geometry(geometry);
  }
  catch (const InvalidInput& error)
  {
    return error.what();
  }
  return {};
}

bool says(const std::string& text, const char* what)
{
  return text.find(what) != std::string::npos;
}

PlateGeometry square_plate(std::vector<Soundhole> holes)
{
  return {.outline = RectangleOutline{0.2, 0.2},
          .arching = FlatArching{},
          .thickness = UniformThickness{0.003},
          .soundholes = std::move(holes),
          .bar = std::nullopt};
}

CurveHole square(double x, double y, double side)
{
  const double h = 0.5 * side;
  return {test::polygon({{x - h, y - h}, {x + h, y - h}, {x + h, y + h}, {x - h, y + h}}), false};
}

} // namespace

TEST_CASE("a usual top passes")
{
  CHECK(refusal(test::viola_top()).empty());
}

TEST_CASE("holes outside, across or too near the edge are refused by name")
{
  CHECK(says(refusal(square_plate({square(0.3, 0.0, 0.02)})), "soundhole 1 lies outside the outline"));
  CHECK(
      says(refusal(square_plate({square(0.0, 0.0, 0.02), square(0.1, 0.0, 0.02)})), "soundhole 2 crosses the outline"));
  CHECK(says(refusal(square_plate({square(0.0897, 0.0, 0.02)})), "at least 0.3 mm must remain"));
  CHECK(refusal(square_plate({square(0.0890, 0.0, 0.02)})).empty());
}

TEST_CASE("holes that cross or contain each other, or their own mirror image, are refused")
{
  CHECK(says(refusal(square_plate({square(0.0, 0.0, 0.02), square(0.015, 0.003, 0.02)})),
             "soundhole 2 crosses soundhole 1"));
  CHECK(says(refusal(square_plate({square(0.0, 0.0, 0.04), square(0.0, 0.0, 0.02)})), "lies inside soundhole 1"));
  CurveHole across = square(0.0, 0.005, 0.02);
  across.mirror = true;
  CHECK(says(refusal(square_plate({across})), "mirror image"));
}

TEST_CASE("a hole that crosses itself is refused")
{
  const CurveHole bow_tie{test::polygon({{0.0, 0.0}, {0.02, 0.03}, {0.02, 0.0}, {0.0, 0.02}}), false};
  CHECK(says(refusal(square_plate({bow_tie})), "crosses itself"));
}

TEST_CASE("a hole that touches itself or has no area is refused")
{
  const auto refusal_of = [](const std::vector<Eigen::Vector2d>& points) {
    return refusal(square_plate({CurveHole{test::polygon(points), false}}));
  };
  const std::vector<Eigen::Vector2d> spike = {{0.0, 0.0},  {0.02, 0.0},   {0.02, 0.02}, {0.0, 0.02},
                                              {0.0, 0.01}, {-0.02, 0.01}, {0.0, 0.01}};
  CHECK(says(refusal_of(spike), "touches itself"));
  CHECK(says(refusal_of({{0.0, 0.0}, {0.02, 0.0}, {0.02, 0.02}, {0.01, 0.0}, {0.0, 0.02}}), "touches itself"));
  CHECK(says(refusal_of({{0.0, 0.0}, {0.02, 0.0}, {0.01, 0.0}}), "touches itself"));
  CHECK(refusal_of({{0.0, 0.0}, {0.02, 0.0}, {0.02, 0.02}, {0.01, 1e-4}, {0.0, 0.02}}).empty());
}

TEST_CASE("a bar outside the plate or across a hole is refused")
{
  PlateGeometry top = test::viola_top();
  top.bar->length = 0.5;
  CHECK(says(refusal(top), "the bar crosses the outline"));
  top = test::viola_top();
  top.bar->offset = 0.040;
  CHECK_MESSAGE(says(refusal(top), "the bar crosses soundhole 1"), refusal(top));
  top.bar->offset = 0.3;
  CHECK(says(refusal(top), "the bar lies outside the outline"));
  top.bar->width = -0.006;
  CHECK(says(refusal(top), "0 < width < length"));
}
