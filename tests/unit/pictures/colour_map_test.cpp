// SPDX-License-Identifier: MPL-2.0
#include "pictures/colour_map.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

namespace
{

double difference(const Lab& p, const Lab& q)
{
  return std::hypot(p.L - q.L, p.a - q.a, p.b - q.b);
}

bool is_on_screen(const Colour& c)
{
  for (const double v : {c.red, c.green, c.blue})
    if (!(v >= 0.0 && v <= 1.0))
      return false;
  return true;
}

} // namespace

TEST_CASE("L*a*b* of the sRGB primaries agrees with their tabulated values")
{
  // D65, 2 degree observer, as tabulated in many places, e.g. B. Lindbloom's colour calculator; two decimals.
  const struct
  {
    Colour colour;
    Lab lab;
  } known[] = {{{1, 0, 0}, {53.24, 80.09, 67.20}},
               {{0, 1, 0}, {87.73, -86.18, 83.18}},
               {{0, 0, 1}, {32.30, 79.19, -107.86}},
               {{1, 1, 1}, {100.0, 0.0, 0.0}}};
  for (const auto& k : known)
  {
    CHECK(difference(to_lab(k.colour), k.lab) < 0.03);
    const Colour back = to_srgb(to_lab(k.colour));
    CHECK(std::abs(back.red - k.colour.red) < 1e-3);
    CHECK(std::abs(back.green - k.colour.green) < 1e-3);
    CHECK(std::abs(back.blue - k.colour.blue) < 1e-3);
  }
}

TEST_CASE("All maps advance in equal perceptual steps and stay within the colours of a screen")
{
  // Steps of the colours as a screen shows them, measured after the way through sRGB.
  for (const ColourMap* map : {&displacement_map(), &thickness_map(), &height_map(), &strength_map()})
  {
    constexpr int steps = 200;
    double least = 1e9;
    double most = 0.0;
    for (int i = 0; i < steps; ++i)
    {
      const Colour from = map->colour(static_cast<double>(i) / steps);
      const Colour to = map->colour(static_cast<double>(i + 1) / steps);
      CHECK(is_on_screen(from));
      least = std::min(least, difference(to_lab(from), to_lab(to)));
      most = std::max(most, difference(to_lab(from), to_lab(to)));
    }
    CHECK(most < 1.2 * least); // a knot may cut a corner
  }
}

TEST_CASE("All maps run steadily from dark to light or back, so that they read in grey")
{
  for (const ColourMap* map : {&displacement_map(), &thickness_map(), &height_map(), &strength_map()})
  {
    const double whole = to_lab(map->colour(1.0)).L - to_lab(map->colour(0.0)).L;
    CHECK(std::abs(whole) > 55.0);
    for (int i = 0; i < 50; ++i)
    {
      const double step = to_lab(map->colour((i + 1) / 50.0)).L - to_lab(map->colour(i / 50.0)).L;
      CHECK(step * std::copysign(1.0, whole) > 0.5);
    }
  }
}

TEST_CASE("Displacement inward is darker and outward lighter than none, by the same amount")
{
  const double none = to_lab(displacement_map().colour(0.5)).L;
  for (int i = 1; i <= 10; ++i)
  {
    const Lab inward = to_lab(displacement_map().colour(0.5 - 0.05 * i));
    const Lab outward = to_lab(displacement_map().colour(0.5 + 0.05 * i));
    CHECK(none - inward.L == doctest::Approx(outward.L - none).epsilon(0.02));
    // The b* difference is what the commonest colour-blind eyes (no red-green difference) still see.
    CHECK(outward.b - inward.b > 9.0 * i);
  }
}
