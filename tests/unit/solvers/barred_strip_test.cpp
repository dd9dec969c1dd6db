// SPDX-License-Identifier: MPL-2.0
// A long strip with a bar glued along it is a beam of T-section.
#include "sample_models.h"

#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

constexpr double length = 1.0;      // [m]
constexpr double width = 0.02;      // of the strip [m]
constexpr double thickness = 2e-3;  // [m]
constexpr double bar_width = 8e-3;  // [m]
constexpr double bar_height = 6e-3; // [m]

Model barred_strip(const Material& plate_material, const Material& bar_material)
{
  test::GridPlate grid = {.x = {}, .y = {-0.01, -0.004, 0.004, 0.01}, .surface = test::flat(), .thickness = thickness};
  for (int i = 0; i <= 24; ++i)
    grid.x.push_back(length * (i / 24.0 - 0.5));
  grid.under_bar = [](double, double y) { return std::abs(y) < 0.004; };
  Model model = test::plate_model(test::grid_mesh(grid), test::solid(plate_material, thickness));
  model.bars = {{.material = bar_material, .width = bar_width, .profile = {{0.0}, {bar_height}}}};
  return model;
}

/// Lowest frequencies of bending in the plane of symmetry.
double first_vertical_bending(const Model& model)
{
  const System system = assemble(model);
  const ModalResult modes = solve_modes(system, {.num_modes = 6});
  for (Eigen::Index i = 0; i < 6; ++i)
  {
    const Eigen::Matrix3Xd u = nodal_displacements(system.dofs, modes.shapes.col(i));
    const Eigen::Vector3d share = u.rowwise().squaredNorm() / u.squaredNorm();
    if (share.z() > 0.95 && std::abs(u.row(2).sum()) > 0.0)
      return modes.frequencies_hz(i);
  }
  return 0.0;
}

} // namespace

TEST_CASE("a strip with an eccentric bar bends about the neutral axis of the T-section")
{
  // Free beam: f = 22.3733 / (2 pi L^2) sqrt(EI/m). Two woods of different stiffness, so that the neutral axis is not
  // the centre of gravity; E/G is moderate and the beam slender: shear takes about 4 pi^2 I E/(A k G L^2) < 0.1 %.
  const Material plate_material = test::isotropic(10e9, 0.0, 500.0);
  const Material bar_material = test::isotropic(20e9, 0.0, 400.0);
  const double EA1 = 10e9 * width * thickness;
  const double EA2 = 20e9 * bar_width * bar_height;
  const double z2 = -0.5 * (thickness + bar_height);
  const double neutral = EA2 * z2 / (EA1 + EA2);
  const double EI = EA1 * (thickness * thickness / 12.0 + neutral * neutral) +
                    EA2 * (bar_height * bar_height / 12.0 + (z2 - neutral) * (z2 - neutral));
  const double m = 500.0 * width * thickness + 400.0 * bar_width * bar_height;
  const double f = 22.3733 / (2.0 * std::numbers::pi * length * length) * std::sqrt(EI / m);
  // Glued at the mid-surface instead (no offset) it would be less than half as stiff.
  const double EI_without_offset = EA1 * thickness * thickness / 12.0 + EA2 * bar_height * bar_height / 12.0;
  REQUIRE(EI_without_offset < 0.5 * EI);
  CHECK(first_vertical_bending(barred_strip(plate_material, bar_material)) == doctest::Approx(f).epsilon(1.5e-3));
}
