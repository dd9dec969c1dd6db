// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_models.h"

#include <plate/elements/bar.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

TEST_CASE("the height of a bar is straight between its points and constant beyond them")
{
  const BarProfile profile = {.station = {-0.1, 0.0, 0.2}, .height = {3e-3, 12e-3, 4e-3}};
  CHECK(profile.at(-0.5) == test::relative(3e-3));
  CHECK(profile.at(-0.1) == test::relative(3e-3));
  CHECK(profile.at(-0.05) == test::relative(7.5e-3));
  CHECK(profile.at(0.0) == test::relative(12e-3));
  CHECK(profile.at(0.15) == test::relative(6e-3));
  CHECK(profile.at(0.3) == test::relative(4e-3));
}

TEST_CASE("torsion of a bar is straight between the stations of its table")
{
  const BarTorsion torsion = {.station = {-0.1, 0.0, 0.1}, .stiffness = {0.1, 0.5, 0.2}};
  CHECK(torsion.at(-0.2) == 0.1);
  CHECK(torsion.at(-0.05) == doctest::Approx(0.3));
  CHECK(torsion.at(0.05) == doctest::Approx(0.35));
  CHECK(torsion.at(0.2) == 0.2);
}

TEST_CASE("section of a bar under a level plate: moments about the plate's mid-surface")
{
  const double t = 3e-3, h = 10e-3;
  Bar bar = {.material = test::reference_spruce(), .width = 6e-3, .profile = {{0.0}, {h}}};
  const BarSection s = bar_section(bar, -0.5 * t, h, Eigen::Matrix3d::Identity(), {});
  const double E = 11e9;
  const double arm = 0.5 * (t + h); // from the mid-surface down to the middle of the bar
  CHECK(s.P[0] == doctest::Approx(E * h));
  CHECK(s.P[1] == doctest::Approx(-E * h * arm));
  CHECK(s.P[2] == doctest::Approx(E * (h * h * h / 12.0 + h * arm * arm)));
  CHECK(s.mass[0] == doctest::Approx(400.0 * h));
  CHECK(s.mass[1] == test::relative(-400.0 * h * arm));
  CHECK(s.mass[2] == test::relative(400.0 * (h * h * h / 12.0 + h * arm * arm)));
  CHECK(s.shear == doctest::Approx(5.0 / 6.0 * 671e6 * h)); // G13: bending in the plane of L and the height
  CHECK(std::abs(s.shear_from_strain) < 1e-12);
}

TEST_CASE("a bar on a slope keeps the axes of its board")
{
  // Along a slope the modulus along the bar is that of the board at that angle between L and T ([Jones1999] eq. 2.97).
  const double slope = 0.2;
  const Eigen::Vector3d normal = Eigen::Vector3d(-slope, 0.0, 1.0).normalized();
  Bar bar = {.material = test::reference_spruce(), .width = 6e-3, .profile = {{0.0}, {0.01}}};
  const BarSection s = bar_section(bar, -1.5e-3, 0.01, shell_frame(normal, {}), {});
  const OrthotropicElastic m = bar.material.elastic;
  const double c2 = 1.0 / (1.0 + slope * slope);
  const double s2 = 1.0 - c2;
  const double S = c2 * c2 / m.E1 + s2 * s2 / m.E3 + c2 * s2 * (1.0 / m.G13 - 2.0 * m.nu13 / m.E1);
  CHECK(s.P[0] == doctest::Approx(0.01 / S).epsilon(1e-10));
  // Shear strain (along, normal) per strain along it under stress along it, from the strains of the board.
  const double c = std::sqrt(c2), si = std::sqrt(s2);
  const double e_L = c2 / m.E1 - m.nu13 * s2 / m.E1;
  const double e_T = s2 / m.E3 - m.nu13 * c2 / m.E1;
  const double shear = 2.0 * c * si * (e_T - e_L) + (c2 - s2) * c * si / m.G13;
  CHECK(s.shear_from_strain == doctest::Approx(shear / S).epsilon(1e-10));
}
