// SPDX-License-Identifier: MPL-2.0
// Order on plates glued along folds.
#include "sample_models.h"
#include "self_convergence.h"

#include <plate/assembly/body.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

Model wall(double length, double width, int cells)
{
  constexpr double thickness = 0.02;
  Model model = test::plate_model(test::grid_mesh({.x = test::even_lines(0.0, length, 2 * cells),
                                                   .y = test::even_lines(0.0, width, cells),
                                                   .surface = test::flat(),
                                                   .thickness = thickness}),
                                  test::solid(test::isotropic(10e9, 0.3, 500.0), thickness));
  model.supports = {{.group = "x-", .support = EdgeSupport::clamped}};
  return model;
}

/// A square tube, clamped at one end.
System tube(int cells)
{
  constexpr double side = 1.0;
  Body body;
  for (int k = 0; k < 4; ++k)
  {
    BodyPart part = {.name = "wall", .model = wall(2.0 * side, side, cells)};
    const Eigen::AngleAxisd turn(0.5 * k * std::numbers::pi, Eigen::Vector3d::UnitX());
    part.placement.linear() = turn.toRotationMatrix();
    part.placement.translation() = turn * Eigen::Vector3d(0.0, -0.5 * side, -0.5 * side);
    body.parts.push_back(part);
  }
  body.joints = nodes_at_one_place(body.parts);
  return assemble(body).system;
}

} // namespace

TEST_CASE("frequencies of a tube of plates converge faster than the third power of the element size")
{
  // Smooth solutions have six; where folds end at the clamp they are not smooth. A joint that is too soft or locks
  // leaves one or two.
  const std::vector<double> orders = test::orders_of_systems(tube, 0, 4);
  for (const double order : orders)
  {
    MESSAGE("order ", order);
    CHECK(order > 3.0);
  }
}
