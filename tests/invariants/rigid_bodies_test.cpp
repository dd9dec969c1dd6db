// SPDX-License-Identifier: MPL-2.0
// Rigid motions of an assembled plate: no strain energy, and the kinetic energy of the bodies it is made of.
#include "sample_models.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

using namespace plate;

namespace
{

/// A body with its sides along the axes.
struct Box
{
  Eigen::Vector3d low;  // [m]
  Eigen::Vector3d high; // [m]
  double density;       // [kg/m3]
};

/// Mass, moments and inertia in the six rigid motions, shifts first, about the origin: integrals over a box of its
/// density times w w^T with w the motions of a point. First principles.
Eigen::Matrix<double, 6, 6> inertia_of(double mass, const Eigen::Vector3d& centre, const Eigen::Vector3d& size)
{
  const Eigen::Matrix3d second =
      mass * (centre * centre.transpose() + Eigen::Matrix3d((size.cwiseAbs2() / 12.0).asDiagonal()));
  Eigen::Matrix3d cross; // cross * turn = turn x centre, reversed
  cross << 0.0, centre.z(), -centre.y(), -centre.z(), 0.0, centre.x(), centre.y(), -centre.x(), 0.0;
  Eigen::Matrix<double, 6, 6> inertia;
  inertia << mass * Eigen::Matrix3d::Identity(), mass * cross, mass * cross.transpose(),
      second.trace() * Eigen::Matrix3d::Identity() - second;
  return inertia;
}

constexpr double thickness = 2e-3;    // [m]
constexpr double bar_height = 9e-3;   // [m]
constexpr double patch_height = 2e-4; // [m]

/// A flat plate of two plies, a bar from x = -80 to 40 and y = 20 to 30 mm, patches on both faces that end on lines of
/// the mesh, one of them under the bar.
Model plate_with_parts()
{
  test::GridPlate grid = {.x = {-0.1, -0.08, -0.02, 0.04, 0.1},
                          .y = {-0.06, -0.02, 0.02, 0.03, 0.06},
                          .surface = test::flat(),
                          .thickness = thickness};
  grid.under_bar = [](double x, double y) { return x > -0.08 && x < 0.04 && y > 0.02 && y < 0.03; };
  const Laminate plies = {{{.material = test::reference_spruce(), .thickness = 1.5e-3},
                           {.material = test::carbon_epoxy(), .thickness = 0.5e-3, .angle = Angle::degrees(40)}}};
  Model model = test::plate_model(test::grid_mesh(grid), plies);
  model.bars = {{.material = test::reference_spruce(), .width = 0.01, .profile = {{0.0}, {bar_height}}}};
  const Laminate patch = test::solid(test::carbon_epoxy(), patch_height, 10.0);
  model.patches = {{.side = PlateSide::inside,
                    .region = PolygonRegion{{{-0.02, -0.02}, {0.1, -0.02}, {0.1, 0.06}, {-0.02, 0.06}}},
                    .laminate = patch},
                   {.side = PlateSide::outside,
                    .region = PolygonRegion{{{-0.1, -0.06}, {-0.02, -0.06}, {-0.02, 0.02}, {-0.1, 0.02}}},
                    .laminate = patch}};
  return model;
}

/// The same as bodies. Where the patch lies under it the bar begins below the patch.
std::array<Box, 6> bodies()
{
  const double spruce = 400.0;
  const double carbon = 1600.0;
  const double face = -0.5 * thickness;
  const double ply = 0.5e-3; // between the plies
  const double below = face - patch_height;
  return {{{{-0.1, -0.06, face}, {0.1, 0.06, ply}, spruce},
           {{-0.1, -0.06, ply}, {0.1, 0.06, -face}, carbon},
           {{-0.02, -0.02, below}, {0.1, 0.06, face}, carbon},
           {{-0.1, -0.06, -face}, {-0.02, 0.02, -face + patch_height}, carbon},
           {{-0.08, 0.02, face - bar_height}, {-0.02, 0.03, face}, spruce},
           {{-0.02, 0.02, below - bar_height}, {0.04, 0.03, below}, spruce}}};
}

} // namespace

TEST_CASE("mass, moments and inertia of a plate with plies, patches, bar and mass are those of its bodies")
{
  Model model = plate_with_parts();
  model.masses = {{{0.05, -0.04}, 4e-3}};
  const System system = assemble(model);
  REQUIRE(system.rigid_motions.cols() == 6);
  const Eigen::Matrix<double, 6, 6> kinetic =
      system.rigid_motions.transpose() * (system.M.selfadjointView<Eigen::Lower>() * system.rigid_motions);
  Eigen::Matrix<double, 6, 6> expected = Eigen::Matrix<double, 6, 6>::Zero();
  for (const Box& box : bodies())
  {
    const Eigen::Vector3d size = box.high - box.low;
    expected += inertia_of(box.density * size.prod(), 0.5 * (box.low + box.high), size);
  }
  expected += inertia_of(4e-3, {0.05, -0.04, 0.0}, {0.0, 0.0, 0.0});
  for (int i = 0; i < 6; ++i)
    for (int j = 0; j < 6; ++j)
    {
      CAPTURE(i);
      CAPTURE(j);
      CHECK(std::abs(kinetic(i, j) - expected(i, j)) < 1e-10 * std::sqrt(expected(i, i) * expected(j, j)));
    }
}

TEST_CASE("rigid motions of a plate with all its parts carry no strain energy")
{
  const System system = assemble(plate_with_parts());
  const Eigen::MatrixXd KR = system.K.selfadjointView<Eigen::Lower>() * system.rigid_motions;
  CHECK(KR.cwiseAbs().maxCoeff() < 1e-12 * Eigen::VectorXd(system.K.diagonal()).maxCoeff());
}
