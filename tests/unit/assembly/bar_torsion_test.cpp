// SPDX-License-Identifier: MPL-2.0
// The table of a bar's torsion: shear moduli of the plies seen from the bar, stations, heights.
#include "relative.h"
#include "sample_models.h"

#include <plate/assembly/model.h>
#include <plate/elements/glued_torsion.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <vector>

using namespace plate;

namespace
{

constexpr double width = 6e-3; // of the bar [m]

/// Flat plate 0.2 x 0.06 m with a bar along x in its middle, 4 mm high at the ends, 10 in the middle.
Model barred(const Laminate& laminate)
{
  test::GridPlate grid = {.x = {-0.1, -0.05, -0.02, 0.03, 0.07, 0.1},
                          .y = {-0.03, -0.003, 0.003, 0.03},
                          .surface = test::flat(),
                          .thickness = total_thickness(laminate)};
  grid.under_bar = [](double, double y) { return std::abs(y) < 0.003; };
  Model model = test::plate_model(test::grid_mesh(grid), laminate);
  model.bars = {
      {.material = test::reference_spruce(), .width = width, .profile = {{-0.1, 0.01, 0.1}, {4e-3, 10e-3, 4e-3}}}};
  return model;
}

BarTorsion table(const Model& model)
{
  const std::vector<TriangleCover> covers = triangle_covers(model);
  return *covers[static_cast<std::size_t>(model.mesh.bars[0].triangles[0])].bar_torsion;
}

double expected(double height, const std::vector<TorsionLayer>& strip)
{
  const OrthotropicElastic spruce = test::reference_spruce().elastic;
  return glued_torsional_stiffness(width, {.thickness = height, .G_across = spruce.G12, .G_normal = spruce.G13}, strip);
}

} // namespace

TEST_CASE("stations reach from end to end and hit the bends of the profile")
{
  const OrthotropicElastic m = test::reference_spruce().elastic;
  const BarTorsion torsion = table(barred(test::solid(test::reference_spruce(), 2.5e-3)));
  CHECK(torsion.station.front() == test::relative(-0.1));
  CHECK(torsion.station.back() == test::relative(0.1));
  const std::vector<TorsionLayer> strip = {{.thickness = 2.5e-3, .G_across = m.G12, .G_normal = m.G13}};
  for (const auto& [station, height] : {std::pair(-0.1, 4e-3), std::pair(0.01, 10e-3), std::pair(0.1, 4e-3)})
    CHECK(torsion.at(station) / expected(height, strip) == doctest::Approx(1.0).epsilon(1e-9));
  // Between the stations the table is straight; the true curve over the height is not.
  CHECK(torsion.at(-0.0431) / expected(10e-3 - 6e-3 * 0.0531 / 0.11, strip) == doctest::Approx(1.0).epsilon(1e-3));
}

TEST_CASE("plies across and aslant under a bar")
{
  const OrthotropicElastic m = test::reference_spruce().elastic;
  // Grain across the bar: the shear moduli 13 and 23 change places.
  const std::vector<TorsionLayer> across = {{.thickness = 2.5e-3, .G_across = m.G12, .G_normal = m.G23}};
  CHECK(table(barred(test::solid(test::reference_spruce(), 2.5e-3, 90.0))).at(0.01) / expected(10e-3, across) ==
        doctest::Approx(1.0).epsilon(1e-9));
  // 30 deg: [Jones1999] eq. 2.84 for Q66 and the rotated transverse compliance cos^2/G13 + sin^2/G23.
  const OrthotropicElastic c = test::carbon_epoxy().elastic;
  const double angle = std::numbers::pi / 6.0;
  const double c2 = std::pow(std::cos(angle), 2);
  const double s2 = 1.0 - c2;
  const double d = 1.0 - c.nu12 * c.nu12 * c.E2 / c.E1;
  const double Q66 = (c.E1 + c.E2 - 2.0 * c.nu12 * c.E2) / d * s2 * c2 + c.G12 * (c2 - s2) * (c2 - s2);
  const double G_normal = 1.0 / (c2 / c.G13 + s2 / c.G23);
  const std::vector<TorsionLayer> aslant = {{.thickness = 1e-3, .G_across = Q66, .G_normal = G_normal}};
  CHECK(table(barred(test::solid(test::carbon_epoxy(), 1e-3, 30.0))).at(0.01) / expected(10e-3, aslant) ==
        doctest::Approx(1.0).epsilon(1e-9));
}

TEST_CASE("a bar aslant sees the plies at their angle from it")
{
  const double aslant = std::numbers::pi / 9.0; // 20 deg
  for (const double from_bar : {30.0, -30.0, 65.0})
  {
    Model turned = barred(test::solid(test::carbon_epoxy(), 1e-3, 20.0 + from_bar));
    turned.bars[0].axis = {std::cos(aslant), std::sin(aslant), 0.0};
    const BarTorsion straight = table(barred(test::solid(test::carbon_epoxy(), 1e-3, from_bar)));
    CHECK(table(turned).at(0.01) / straight.at(0.01) == doctest::Approx(1.0).epsilon(1e-9));
  }
}

TEST_CASE("plies of a patch under the bar count as plate")
{
  Model model = barred(test::solid(test::reference_spruce(), 2.5e-3));
  model.patches = {{.side = PlateSide::inside,
                    .region = EllipseRegion{.centre = {0.0, 0.0}, .axes = {0.06, 0.04}},
                    .laminate = test::solid(test::carbon_epoxy(), 0.5e-3)}};
  const OrthotropicElastic m = test::reference_spruce().elastic;
  const OrthotropicElastic c = test::carbon_epoxy().elastic;
  const TorsionLayer plate = {.thickness = 2.5e-3, .G_across = m.G12, .G_normal = m.G13};
  const TorsionLayer patch = {.thickness = 0.5e-3, .G_across = c.G12, .G_normal = c.G13};
  const BarTorsion torsion = table(model);
  const std::vector<TorsionLayer> both = {patch, plate};
  const std::vector<TorsionLayer> bare = {plate};
  CHECK(torsion.at(0.01) / expected(10e-3, both) == doctest::Approx(1.0).epsilon(1e-9));
  CHECK(torsion.at(-0.1) / expected(4e-3, bare) == doctest::Approx(1.0).epsilon(1e-9));
}
