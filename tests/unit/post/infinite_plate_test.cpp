// SPDX-License-Identifier: MPL-2.0
// An orthotropic plate: tests/reference/data/air.csv.
#include "relative.h"

#include <plate/core/error.h>
#include <plate/post/infinite_plate.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

Eigen::Matrix3d rigidity(double D11, double D22, double D12, double D66)
{
  return Eigen::Matrix3d{{D11, D12, 0.0}, {D12, D22, 0.0}, {0.0, 0.0, D66}};
}

} // namespace

TEST_CASE("an isotropic plate: 1 / (8 sqrt(D m))")
{
  // [Cremer2005] ch. 5.
  CHECK(infinite_plate_mobility(rigidity(10.0, 10.0, 3.0, 3.5), 2.0) ==
        test::relative(1.0 / (8.0 * std::sqrt(20.0)), 1e-12));
}

TEST_CASE("stretching the plate along one axis: D11 times s^4 is a plate in other coordinates")
{
  // With x = s x' the plate of D11 s^4 and (D12 + 2 D66) s^2 is the isotropic one, its mass per x' y' s times as large.
  const double s = 2.0;
  CHECK(infinite_plate_mobility(rigidity(10.0 * std::pow(s, 4), 10.0, 3.0 * s * s, 3.5 * s * s), 2.0) ==
        test::relative(1.0 / (8.0 * std::sqrt(20.0)) / s, 1e-12));
}

TEST_CASE("any plate: the integral over wave directions by a plain sum")
{
  // Y = 1 / (16 pi sqrt(m)) times the integral over all directions of D(angle)^(-1/2), from the residue of
  // 1 / (D k^4 - m w^2) at its pole; D = D11 c^4 + 2 (D12 + 2 D66) c^2 s^2 + D22 s^4.
  for (const double twist : {0.05, 0.4, 3.0})
  {
    const Eigen::Matrix3d D = rigidity(30.0, 2.0, 0.5, twist);
    double sum = 0.0;
    constexpr int steps = 20000;
    for (int i = 0; i < steps; ++i)
    {
      const double c2 = std::pow(std::cos(2.0 * std::numbers::pi * (i + 0.5) / steps), 2);
      const double s2 = 1.0 - c2;
      sum += 1.0 / std::sqrt(30.0 * c2 * c2 + 2.0 * (0.5 + 2.0 * twist) * c2 * s2 + 2.0 * s2 * s2);
    }
    sum *= 2.0 * std::numbers::pi / steps;
    CHECK(infinite_plate_mobility(D, 1.5) == test::relative(sum / (16.0 * std::numbers::pi * std::sqrt(1.5)), 1e-9));
  }
}

TEST_CASE("sections for which the formula does not hold are refused")
{
  Eigen::Matrix3d D = rigidity(10.0, 10.0, 3.0, 3.5);
  CHECK_THROWS_AS(static_cast<void>(infinite_plate_mobility(D, 0.0)), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(infinite_plate_mobility(-D, 1.0)), InvalidInput);
  D(0, 2) = D(2, 0) = 1.0;
  CHECK_THROWS_AS(static_cast<void>(infinite_plate_mobility(D, 1.0)), InvalidInput);
}
