// SPDX-License-Identifier: MPL-2.0
// Orders on a curved shell, where the solution is smooth, and at a re-entrant corner, where it is not.
#include "sample_models.h"
#include "self_convergence.h"

#include <plate/validation/sphere_mesh.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

namespace
{

std::vector<double> equal_lines(double half, int cells)
{
  return test::lines_with_strips(half, cells - 2, 2.0 * half / cells);
}

} // namespace

TEST_CASE("frequencies of a thick sphere converge with the sixth power of the element size")
{
  // No edge, no corner: the solution is smooth. Surface and displacement by polynomials of degree p = 3: h^2p.
  const auto sphere = [](int n)
  {
    constexpr double thickness = 0.8;
    return test::plate_model(validation::sphere(2.5, thickness, 2 * n),
                             test::solid(test::isotropic(200e9, 0.3, 7800.0), thickness));
  };
  // Three meshes: a fourth one differs by rounding only.
  const std::vector<double> orders = test::observed_orders(sphere, 0, 3);
  MESSAGE("order ", orders.front());
  CHECK(std::abs(orders.front() - 6.0) < 0.3);
}

TEST_CASE("at a re-entrant corner frequencies converge with little more than the element size")
{
  const auto angle = [](int n)
  {
    constexpr double thickness = 0.1;
    return test::plate_model(test::grid_mesh({.x = equal_lines(0.5, 4 * n),
                                              .y = equal_lines(0.5, 4 * n),
                                              .surface = test::flat(),
                                              .thickness = thickness,
                                              .keep = [](double x, double y) { return x < 0.0 || y < 0.0; }}),
                             test::solid(test::isotropic(10e9, 0.3, 500.0), thickness));
  };
  // The moments at a free corner of 270 degrees grow like r^(a - 1), a = 0.5445: they obey the equations of a membrane,
  // [Williams1952] (exponent recomputed: sin(3 pi a / 2) = -a sin(3 pi / 2)). The energy errs by h^2a.
  constexpr double exponent = 0.5445;
  const std::vector<double> orders = test::observed_orders(angle, 0, 5);
  for (const double order : orders)
    MESSAGE("order ", order);
  CHECK(std::abs(orders.back() - 2.0 * exponent) < 0.3);
  CHECK(orders.front() > orders.back()); // on coarse meshes what is smooth still weighs more
}
