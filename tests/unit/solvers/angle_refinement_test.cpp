// SPDX-License-Identifier: MPL-2.0
#include "angle_refinement.h"
#include "match_trial.h"

#include <doctest/doctest.h>

#include <numbers>

using namespace plate;

TEST_CASE("a balanced laminate stays so: opposite plies turn together, those along and across not at all")
{
  StackSupplies supplies = test::workshop();
  supplies.balanced = true;
  const auto ply = [&](double degrees)
  {
    return Ply{.material = supplies.sheets[1].material,
               .thickness = supplies.sheets[1].thickness,
               .angle = Angle::degrees(degrees)};
  };
  const Laminate laminate = {{ply(30.0), ply(0.0), ply(-30.0), ply(90.0), ply(-30.0), ply(0.0), ply(30.0)}};
  const auto degrees = [](const Ply& p) { return p.angle.in_radians() * 180.0 / std::numbers::pi; };
  // Each ply would rather lie at 37 degrees: the least sum of squares over those that may turn, t and -t, is given by
  // equal counts of both as 2 (t - 37)^2 + 2 (t + 37)^2, least at t = 0: out of reach of 15 degrees, so that they stop.
  const Laminate pulled_in = match::refined_angles(laminate, supplies,
                                                   [&](const Laminate& l)
                                                   {
                                                     double sum = 0.0;
                                                     for (const Ply& p : l.plies)
                                                       sum += std::pow(degrees(p) - 37.0, 2);
                                                     return sum;
                                                   });
  // The first alone at 37 degrees is within reach.
  const Laminate turned = match::refined_angles(
      laminate, supplies, [&](const Laminate& l) { return std::pow(degrees(l.plies.front()) - 37.0, 2); });
  const auto check = [&](const Laminate& found, double angle, double tolerance)
  {
    const std::vector<double> wanted = {angle, 0.0, -angle, 90.0, -angle, 0.0, angle};
    for (std::size_t i = 0; i < wanted.size(); ++i)
    {
      CAPTURE(i);
      CHECK(std::abs(degrees(found.plies[i]) - wanted[i]) < tolerance);
    }
  };
  check(pulled_in, 15.0, 0.1);
  check(turned, 37.0, 0.1);
  CHECK(degrees(turned.plies[0]) == doctest::Approx(-degrees(turned.plies[2])).epsilon(1e-12));
}
