// SPDX-License-Identifier: MPL-2.0
#include "relative.h"

#include <plate/core/error.h>
#include <plate/meshes/direction_fit.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <random>

using namespace plate;

namespace
{

constexpr double degree = std::numbers::pi / 180.0;

const std::vector<Eigen::Vector2d> region = {{-0.17, -0.1}, {0.17, -0.1}, {0.17, 0.1}, {-0.17, 0.1}};

/// Fibres that drape: a few degrees about a mean.
double draped(const Eigen::Vector2d& p, double mean)
{
  return mean + (8.0 * std::sin(p.x() / 0.1) + 50.0 * p.y()) * degree;
}

std::vector<MeasuredDirection> measured(double mean, double noise, bool head_and_tail)
{
  std::mt19937 random(11);
  std::uniform_real_distribution<double> uniform(-1.0, 1.0);
  std::normal_distribution<double> normal(0.0, noise);
  std::vector<MeasuredDirection> points;
  for (int i = 0; i < 400; ++i)
  {
    const Eigen::Vector2d place(0.17 * uniform(random), 0.1 * uniform(random));
    const double turned = head_and_tail && i % 2 == 0 ? std::numbers::pi : 0.0;
    points.push_back({place, Angle::radians(draped(place, mean) + normal(random) + turned)});
  }
  return points;
}

} // namespace

TEST_CASE("directions are found within the noise, whichever way a fibre is read")
{
  for (const double mean : {0.0, 45.0 * degree, 89.0 * degree}) // the last passes 90 degrees and comes out at -90
  {
    const DirectionFit fit = fit_directions(measured(mean, 0.5 * degree, true), region);
    CHECK(fit.report.points == 400);
    CHECK(fit.report.rms == test::relative(0.5 * degree, 0.1));
    for (const Eigen::Vector2d& p :
         {Eigen::Vector2d(0.0, 0.0), Eigen::Vector2d(0.1, 0.05), Eigen::Vector2d(-0.12, -0.06)})
    {
      const double off = direction_at(fit.field, p).in_radians() - draped(p, mean);
      CHECK(std::abs(std::remainder(off, std::numbers::pi)) < 0.5 * degree);
    }
  }
}

TEST_CASE("one wrong direction is named and left out")
{
  std::vector<MeasuredDirection> points = measured(0.0, 0.3 * degree, false);
  points[123].angle = Angle::degrees(50);
  const DirectionFit fit = fit_directions(points, region);
  REQUIRE(fit.report.outliers.size() == 1);
  CHECK(fit.report.outliers[0].point == 123);
}

TEST_CASE("directions all over the place are refused")
{
  std::vector<MeasuredDirection> points = measured(0.0, 0.3 * degree, false);
  points[7].angle = Angle::degrees(85);
  CHECK_THROWS_WITH_AS(static_cast<void>(fit_directions(points, region)), doctest::Contains("off the mean direction"),
                       InvalidInput);
}
