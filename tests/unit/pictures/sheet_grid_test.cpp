// SPDX-License-Identifier: MPL-2.0
#include "pictures/sheet_grid.h"

#include <doctest/doctest.h>

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
