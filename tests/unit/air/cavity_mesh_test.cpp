// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_cavities.h"

#include <plate/air/cavity_mesh.h>
#include <plate/air/cavity_space.h>
#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;
using test::lifted;

TEST_CASE("the cavity between two flat plates ends half a thickness inside their mid-surfaces")
{
  const CavityMesh cavity =
      cavity_between(test::rectangle(0.3, 0.2, 4, 3, 1e-3), lifted(test::rectangle(0.32, 0.22, 5, 4, 3e-3), 0.04),
                     test::rectangle(0.32, 0.22, 6, 4, 4e-3));
  CHECK((cavity.top.array() - 0.0385).abs().maxCoeff() < 1e-12);
  CHECK((cavity.back.array() - 0.002).abs().maxCoeff() < 1e-12);
  CHECK(CavitySpace(cavity, 0).volume() == test::relative(0.3 * 0.2 * 0.0365, 1e-12));
}

TEST_CASE("the inner face of a sloping plate is further from its mid-surface along z")
{
  const double slope = 0.5;
  const test::Surface tilted = {.position = [=](double x, double y) { return Eigen::Vector3d(x, y, 0.1 + slope * x); },
                                .normal = [=](double, double)
                                { return Eigen::Vector3d(-slope, 0.0, 1.0).normalized(); }};
  const ShellMesh top =
      test::grid_mesh({.x = {-0.1, 0.0, 0.1}, .y = {-0.1, 0.0, 0.1}, .surface = tilted, .thickness = 4e-3});
  const CavityMesh cavity =
      cavity_between(test::rectangle(0.2, 0.2, 3, 3, 1e-3), top, lifted(test::rectangle(0.2, 0.2, 2, 2, 1e-3), -0.1));
  const double offset = 0.5 * 4e-3 * std::sqrt(1.0 + slope * slope); // distance of parallel lines, measured along z
  for (std::size_t i = 0; i < cavity.planform.nodes.size(); ++i)
    CHECK(cavity.top(static_cast<Eigen::Index>(i)) ==
          test::relative(0.1 + slope * cavity.planform.nodes[i].x() - offset, 1e-9));
}

TEST_CASE("over a hole of a plate the height goes on from its surroundings")
{
  ShellMesh top = test::grid_mesh({.x = {-0.1, -0.05, -0.03, 0.03, 0.05, 0.1},
                                   .y = {-0.1, -0.04, 0.04, 0.1},
                                   .surface = test::flat(),
                                   .thickness = 2e-3,
                                   .keep = [](double x, double y) { return std::hypot(x, y) > 0.03; }});
  const CavityMesh cavity = cavity_between(test::rectangle(0.2, 0.2, 8, 8, 1e-3), lifted(std::move(top), 0.03),
                                           test::rectangle(0.2, 0.2, 2, 2, 2e-3));
  CHECK((cavity.top.array() - 0.029).abs().maxCoeff() < 1e-12);
}

TEST_CASE("plates that cross or lie elsewhere are refused")
{
  const ShellMesh planform = test::rectangle(0.3, 0.2, 4, 3, 1e-3);
  const ShellMesh back = test::rectangle(0.3, 0.2, 4, 3, 1e-3);
  CHECK_THROWS_AS(static_cast<void>(cavity_between(planform, lifted(back, -0.03), back)), InvalidInput);
  ShellMesh aside = lifted(back, 0.03);
  for (Eigen::Vector3d& node : aside.nodes)
    node.x() += 1.0;
  CHECK_THROWS_AS(static_cast<void>(cavity_between(planform, aside, back)), InvalidInput);
  CavityMesh short_of_heights = test::box(2, 2);
  short_of_heights.top.conservativeResize(3);
  CHECK_THROWS_AS(check_cavity(short_of_heights), InvalidInput);
  CavityMesh nothing = test::box(2, 2);
  nothing.top = nothing.back;
  CHECK_THROWS_AS(check_cavity(nothing), InvalidInput);
  nothing.top(0) = NAN;
  CHECK_THROWS_AS(check_cavity(nothing), InvalidInput);
}
