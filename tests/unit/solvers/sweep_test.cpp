// SPDX-License-Identifier: MPL-2.0
#include "changed_plate.h"
#include "relative.h"

#include <plate/core/error.h>
#include <plate/solvers/studies/sweep.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <span>
#include <string>
#include <vector>

using namespace plate;

namespace
{

constexpr double length = 0.30;    // [m]
constexpr double thickness = 3e-3; // [m]

/// Spruce without Poisson contraction: bending along and across do not couple, so they cross and do not veer.
Material spruce()
{
  Material material = test::reference_spruce();
  material.elastic.nu12 = material.elastic.nu13 = material.elastic.nu23 = 0.0;
  return material;
}

/// A free flat spruce rectangle; parameters: width, thickness [m].
class Rectangle : public ParametricModel
{
public:
  Model build(std::span<const double> parameters) override
  {
    const double width = parameters[0];
    if (!(width > 0.0))
      throw InvalidInput("rectangle: width must be positive");
    const double t = parameters.size() > 1 ? parameters[1] : thickness;
    return test::plate_model(test::rectangle(length, width, 6, 4, t), test::solid(spruce(), t));
  }
};

/// A mode of a flat plate that bends across the width only: w is the same along the body.
const ModeTrack& cross_bending(const SweepResult& result)
{
  const Eigen::MatrixXd& w = result.first.normal_displacement;
  std::size_t best = 0;
  double least = 1e300;
  for (std::size_t t = 0; t < result.tracks.size(); ++t)
  {
    // Correlation with the first bending shape of a free beam across, close to y^2 less its mean.
    double ww = 0.0, wp = 0.0, pp = 0.0;
    for (std::size_t i = 0; i < result.first.mesh.nodes.size(); ++i)
    {
      const double y = result.first.mesh.nodes[i].y() / 0.14;
      const double pattern = y * y - 1.0 / 12.0;
      const double value = w(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(t));
      ww += value * value;
      wp += value * pattern;
      pp += pattern * pattern;
    }
    const double mismatch = 1.0 - wp * wp / (ww * pp);
    if (mismatch < least)
    {
      least = mismatch;
      best = t;
    }
  }
  return result.tracks[best];
}

const ModeTrack& named(const SweepResult& result, const std::string& name)
{
  return *std::find_if(result.tracks.begin(), result.tracks.end(), [&](const ModeTrack& t) { return t.name == name; });
}

std::vector<std::vector<double>> widths(double from, double to, int count)
{
  std::vector<std::vector<double>> points;
  for (int i = 0; i < count; ++i)
    points.push_back({from + (to - from) * i / (count - 1)});
  return points;
}

} // namespace

TEST_CASE("tracks keep their shape where modes cross")
{
  // Bending across goes with 1/W^2 and does not care for the length, bending along does not care for the width: as the
  // plate is made wider, bending across falls through bending along, 22.37/(2 pi L^2) sqrt(E1 t^2/(12 rho)) = 180 Hz.
  Rectangle rectangle;
  const auto points = widths(0.14, 0.24, 6);
  const SweepResult result = sweep(rectangle, points, points.size(), {.num_modes = 6});
  REQUIRE(result.complete);
  REQUIRE(result.tracks.size() == 6);
  CHECK(result.num_solved >= 6);
  const ModeTrack& across = cross_bending(result);
  const ModeTrack& twist = named(result, "M1");
  const auto along =
      std::find_if(result.tracks.begin(), result.tracks.end(),
                   [](const ModeTrack& track) { return std::abs(track.frequency_hz.front() / 179.6 - 1.0) < 0.01; });
  REQUIRE(along != result.tracks.end());
  CHECK(across.frequency_hz.front() > along->frequency_hz.front());
  CHECK(across.frequency_hz.back() < along->frequency_hz.back());
  CHECK(across.mode.back() < across.mode.front());
  for (std::size_t i = 0; i < points.size(); ++i)
  {
    const double W = points[i][0];
    const double shrink = points[0][0] / W;
    CHECK(along->frequency_hz[i] == doctest::Approx(along->frequency_hz[0]).epsilon(2e-3));
    CHECK(across.frequency_hz[i] == doctest::Approx(across.frequency_hz[0] * shrink * shrink).epsilon(0.01)); // shear
    CHECK(twist.frequency_hz[i] == doctest::Approx(twist.frequency_hz[0] * shrink).epsilon(0.02));            // edges
    CHECK(result.mass[i] == doctest::Approx(400.0 * length * W * thickness).epsilon(1e-10));
  }
  for (const ModeTrack& track : result.tracks)
    for (std::size_t i = 0; i < points.size(); ++i)
      CHECK((track.mode[i] == 0) == std::isnan(track.frequency_hz[i]));
}

TEST_CASE("on a grid each row is followed from the row before")
{
  // Thickness scales all modes of a thin plate alike: tracks of the second row are those of the first.
  Rectangle rectangle;
  const std::vector<std::vector<double>> points = {{0.14, 2e-3},   {0.19, 2e-3},   {0.24, 2e-3},
                                                   {0.14, 2.2e-3}, {0.19, 2.2e-3}, {0.24, 2.2e-3}};
  const SweepResult result = sweep(rectangle, points, 3, {.num_modes = 5});
  REQUIRE(result.complete);
  for (const ModeTrack& track : result.tracks)
    for (std::size_t i = 0; i < 3; ++i)
    {
      CHECK(track.mode[i + 3] == track.mode[i]);
      CHECK(track.frequency_hz[i + 3] / track.frequency_hz[i] ==
            doctest::Approx(1.1).epsilon(0.01)); // shear: a little less
    }
}

TEST_CASE("a sweep may be stopped and gives what it has")
{
  Rectangle rectangle;
  const auto points = widths(0.16, 0.17, 5);
  std::vector<std::size_t> seen;
  const SweepResult result = sweep(rectangle, points, points.size(),
                                   {.num_modes = 4,
                                    .progress = [&](std::size_t i, std::size_t n)
                                    {
                                      CHECK(n == 5);
                                      seen.push_back(i);
                                      return i < 2;
                                    }});
  CHECK(seen == std::vector<std::size_t>{0, 1, 2});
  CHECK_FALSE(result.complete);
  CHECK(result.mass.size() == 2);
  CHECK(result.tracks[0].frequency_hz.size() == 2);
  CHECK(result.last.mesh.nodes[0].y() == test::relative(-0.5 * 0.1625));
}

TEST_CASE("with a reduced model tracks are those of full solves, crossings included")
{
  // As E2 grows bending across climbs through bending along, which knows E1 alone (reduced_model_test.cpp).
  test::ChangedPlate design(
      test::plate_model(test::rectangle(length, 0.16, 6, 4, thickness), test::solid(spruce(), thickness)),
      [](std::span<const double> p, Model& model)
      { model.material.laminate.plies[0].material.elastic.E2 = p[0] * 1e9; });
  std::vector<std::vector<double>> points;
  for (int i = 0; i <= 30; ++i)
    points.push_back({0.4 + 0.04 * i});
  REQUIRE(reduced_model_pays(points.size(), 1));
  const SweepResult full = sweep(design, points, points.size(), {.num_modes = 5});
  const SweepResult reduced = sweep(design, points, points.size(), {.num_modes = 5, .reduced_tolerance = 1e-5});
  CHECK(full.num_reduced == 0);
  CHECK(reduced.num_reduced >= 31);
  CHECK(reduced.num_solved < 15);
  CHECK(reduced.reduced_error < 1e-5);
  bool crossed = false;
  for (std::size_t t = 0; t < 5; ++t)
    for (std::size_t i = 0; i < points.size(); ++i)
    {
      CHECK(reduced.tracks[t].mode[i] == full.tracks[t].mode[i]);
      crossed = crossed || full.tracks[t].mode[i] != full.tracks[t].mode[0];
      CHECK(reduced.tracks[t].frequency_hz[i] == test::relative(full.tracks[t].frequency_hz[i], 1e-5));
    }
  CHECK(crossed);
  CHECK(reduced.last.normal_displacement.cols() == 5);
}

TEST_CASE("a point where the reduced model is poor is solved in full")
{
  // No snapshots suffice for a tolerance near rounding: every point falls back on the full solve.
  test::ChangedPlate design(
      test::plate_model(test::rectangle(length, 0.16, 3, 2, thickness), test::solid(spruce(), thickness)),
      [](std::span<const double> p, Model& model)
      { model.material.laminate.plies[0].material.elastic.E2 = p[0] * 1e9; });
  std::vector<std::vector<double>> points;
  for (int i = 0; i < 24; ++i)
    points.push_back({0.4 + 0.05 * i});
  const SweepResult result = sweep(design, points, points.size(), {.num_modes = 3, .reduced_tolerance = 1e-12});
  CHECK(result.complete);
  CHECK(result.num_reduced == 0);
  CHECK(result.tracks[0].frequency_hz.size() == 24);
}

TEST_CASE("a sweep without points or with a point that is no design is refused")
{
  Rectangle rectangle;
  CHECK_THROWS_AS((void)sweep(rectangle, {}, 1), InvalidInput);
  CHECK_THROWS_AS((void)sweep(rectangle, {{0.2}, {-1.0}}, 2, {.num_modes = 2}), InvalidInput);
}
