// SPDX-License-Identifier: MPL-2.0
#include "pictures/field_raster.h"
#include "sample_plate.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;
using test::at_nodes;
using test::make_mesh;

TEST_CASE("A raster has a linear field's own value at every pixel of the plate, and nothing off it but a rim")
{
  const ShellMesh mesh = make_mesh({.length = 0.4, .width = 0.2, .hole = {4, 8, 2, 5}});
  const RefinedSurface surface = refine(mesh, 3);
  const std::vector<double> values = at_nodes(mesh, [](double x, double y) { return 3.0 * x - 5.0 * y + 0.2; });
  const ContouredField field(surface, values);
  const Frame frame{.plate_centre = {0.0, 0.0}, .page_centre = {100.3, 150.7}, .scale = 500.0};
  const FieldRaster raster = rasterise(field, frame, 2.0);
  REQUIRE(raster.values.size() == static_cast<std::size_t>(raster.width * raster.height));
  constexpr double rim = 3.0 / (2.0 * 500.0); // two pixels and a bit [m]
  int on_plate = 0;
  for (int row = 0; row < raster.height; ++row)
    for (int column = 0; column < raster.width; ++column)
    {
      const double value = raster.values[static_cast<std::size_t>(row * raster.width + column)];
      const Eigen::Vector2d place = frame.on_plate(raster.corner + Eigen::Vector2d(column + 0.5, row + 0.5) / 2.0);
      // Cells are 0.4 / 12 by 0.2 / 7 m; the hole spans 4 to 8 of the first and 2 to 5 of the second.
      const double beyond_edge = std::max(std::abs(place[0]) - 0.2, std::abs(place[1]) - 0.1);
      const double into_hole = std::min({place[0] - (-0.2 + 4 * 0.4 / 12), (-0.2 + 8 * 0.4 / 12) - place[0],
                                         place[1] - (-0.1 + 2 * 0.2 / 7), (-0.1 + 5 * 0.2 / 7) - place[1]});
      const double off = std::max(beyond_edge, into_hole);
      if (off < -1e-9)
      {
        ++on_plate;
        CHECK(value == doctest::Approx(3.0 * place[0] - 5.0 * place[1] + 0.2).epsilon(1e-9));
      }
      else if (off > rim)
        CHECK(std::isnan(value));
    }
  CHECK(on_plate == doctest::Approx((0.4 * 0.2) * (1.0 - 12.0 / 84.0) * 1e6).epsilon(0.01)); // a pixel is 1 mm wide
}

TEST_CASE("Page and plate of a frame are each other's inverse, x up and y to the left")
{
  const Frame frame{.plate_centre = {0.01, -0.02}, .page_centre = {100.0, 150.0}, .scale = 500.0};
  const Eigen::Vector2d place(0.11, 0.08);
  CHECK(frame.on_page(place).isApprox(Eigen::Vector2d(50.0, 100.0)));
  CHECK(frame.on_plate(frame.on_page(place)).isApprox(place));
}

TEST_CASE("Colours of a raster run from the low end of the map to the high end, paper off the plate")
{
  const FieldRaster raster{.corner = {0.0, 0.0}, .width = 3, .height = 1, .values = {-1.0, std::nan(""), 1.0}};
  const PixelImage image = coloured(raster, displacement_map(), -1.0, 1.0);
  const auto packed = [](const Colour& c)
  {
    const auto byte = [](double v) { return static_cast<std::uint32_t>(std::lround(255.0 * v)); };
    return byte(c.red) * 65536U + byte(c.green) * 256U + byte(c.blue);
  };
  CHECK(image.pixels == std::vector<std::uint32_t>{packed(displacement_map().colour(0.0)), 0xFFFFFFU,
                                                   packed(displacement_map().colour(1.0))});
}
