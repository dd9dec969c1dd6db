// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/post/mode_compare.h>
#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <utility>
#include <vector>

using namespace plate;

namespace
{

constexpr double length = 0.2; // [m]
constexpr double width = 0.12; // [m]

/// Lowest modes of a free arched spruce plate.
ModeShapes arched_modes(int cells_x, int cells_y, double size = 1.0)
{
  test::GridPlate grid = {.x = {},
                          .y = {},
                          .surface = test::biparabolic(size * length, size * width, size * 0.01),
                          .thickness = size * 3e-3};
  for (int i = 0; i <= cells_x; ++i)
    grid.x.push_back(size * length * (static_cast<double>(i) / cells_x - 0.5));
  for (int i = 0; i <= cells_y; ++i)
    grid.y.push_back(size * width * (static_cast<double>(i) / cells_y - 0.5));
  const Model model = test::plate_model(test::grid_mesh(grid), test::solid(test::reference_spruce(), size * 3e-3));
  const System system = assemble(model);
  return mode_shapes(model.mesh, system.dofs, solve_modes(system, {.num_modes = 8}).shapes);
}

/// Best sum over all ways to give each row a column of its own.
double brute_force(const Eigen::MatrixXd& score)
{
  std::vector<int> columns(static_cast<std::size_t>(score.cols()));
  std::iota(columns.begin(), columns.end(), 0);
  double best = -1e300;
  do
  {
    double sum = 0.0;
    for (Eigen::Index row = 0; row < score.rows(); ++row)
      sum += score(row, columns[static_cast<std::size_t>(row)]);
    best = std::max(best, sum);
  } while (std::next_permutation(columns.begin(), columns.end()));
  return best;
}

} // namespace

TEST_CASE("modes of one plate are alike to themselves and to nothing else")
{
  // Modes are orthogonal with the mass; the volumes of the points stand for it up to rotary inertia, which is worth
  // (pi h / wavelength)^2 / 12, below 2e-3 here, squared.
  const ModeShapes modes = arched_modes(6, 4);
  const Eigen::MatrixXd likeness = modal_assurance(modes, modes);
  for (Eigen::Index i = 0; i < likeness.rows(); ++i)
    for (Eigen::Index j = 0; j < likeness.cols(); ++j)
      CHECK(std::abs(likeness(i, j) - (i == j ? 1.0 : 0.0)) < (i == j ? 1e-12 : 1e-5));
}

TEST_CASE("likeness knows neither sign nor scale, and halves for a mixture of two modes")
{
  const ModeShapes modes = arched_modes(6, 4);
  ModeShapes changed = modes;
  changed.displacement *= -3.7;
  changed.displacement.col(2) = modes.displacement.col(2) + modes.displacement.col(3); // equal norms
  const Eigen::MatrixXd likeness = modal_assurance(modes, changed);
  CHECK(likeness(0, 0) == doctest::Approx(1.0));
  CHECK(likeness(2, 2) == doctest::Approx(0.5).epsilon(0.01));
  CHECK(likeness(3, 2) == doctest::Approx(0.5).epsilon(0.01));
}

TEST_CASE("likeness counts each place with its mass: thick parts more than thin ones")
{
  // w = 1 and w = x on a wedge t = t0 (1 + x/L): the integrals of t, t x and t x^2 over -L/2...L/2 are t0 times L,
  // L^2/12 and L^3/12, so the likeness is (1/12)^2 / (1/12). On a plate of one thickness it is zero.
  ShellMesh mesh = test::rectangle(length, width, 4, 3, 3e-3);
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
    mesh.thickness[i] *= 1.0 + mesh.nodes[i].x() / length;
  const Model wedge = test::plate_model(mesh, test::solid(test::reference_spruce(), 3e-3));
  const DofMap dofs = number_unknowns(wedge);
  const auto shape = [&](auto w)
  {
    return test::unknowns_of(
        wedge, dofs,
        {.displacement = [=](const Eigen::Vector3d& x) { return Eigen::Vector3d(0.0, 0.0, w(x)); },
         .director_change = [](const Eigen::Vector3d&) { return Eigen::Vector3d(0.0, 0.0, 0.0); }});
  };
  const ModeShapes lifted = mode_shapes(wedge.mesh, dofs, shape([](const Eigen::Vector3d&) { return 1.0; }));
  const ModeShapes tilted = mode_shapes(wedge.mesh, dofs, shape([](const Eigen::Vector3d& x) { return x.x(); }));
  CHECK(12.0 * modal_assurance(lifted, tilted)(0, 0) == doctest::Approx(1.0).epsilon(1e-10));
}

TEST_CASE("modes are recognised on another mesh and on a plate of another size")
{
  const ModeShapes coarse = arched_modes(12, 8);
  const ModeShapes fine = arched_modes(15, 10);
  const ModeShapes large = arched_modes(14, 9, 1.5);
  for (const ModeShapes* other : {&fine, &large})
  {
    const Eigen::MatrixXd likeness = modal_assurance(coarse, *other);
    for (Eigen::Index i = 0; i < likeness.rows(); ++i)
      CHECK(likeness(i, i) > 0.9999); // what the coarse mesh lacks
  }
}

TEST_CASE("what lies beside the other plate or in its hole is left out and counted")
{
  const auto plate_with = [](bool hole)
  {
    test::GridPlate grid = {.x = {-0.1, -0.05, 0.0, 0.02, 0.1},
                            .y = {-0.06, -0.02, 0.02, 0.06},
                            .surface = test::flat(),
                            .thickness = 3e-3};
    if (hole)
      grid.keep = [](double x, double y) { return std::abs(x - 0.01) > 0.01 || std::abs(y) > 0.02; };
    const Model model = test::plate_model(test::grid_mesh(grid), test::solid(test::reference_spruce(), 3e-3));
    const System system = assemble(model);
    return mode_shapes(model, system.dofs, solve_modes(system, {.num_modes = 3}).shapes);
  };
  const ModeShapes whole = plate_with(false);
  const ModeShapes pierced = plate_with(true);
  // 20 mm x 40 mm of 200 mm x 120 mm
  CHECK(shape_products(whole, pierced).share_left_out == doctest::Approx(1.0 / 30.0).epsilon(1e-10));
  CHECK(shape_products(pierced, whole).share_left_out == 0.0);
}

TEST_CASE("plates of another form are not compared")
{
  const ModeShapes plate = arched_modes(6, 4);
  ModeShapes corner = plate; // an L of a tenth of the plate's width
  test::GridPlate grid = {
      .x = {-0.1, -0.08, 0.0, 0.1}, .y = {-0.06, -0.05, 0.0, 0.06}, .surface = test::flat(), .thickness = 3e-3};
  grid.keep = [](double x, double y) { return x < -0.08 || y < -0.05; };
  corner.mesh = test::grid_mesh(grid);
  corner.displacement = Eigen::MatrixXd::Ones(3 * static_cast<Eigen::Index>(corner.mesh.nodes.size()), 2);
  CHECK_THROWS_AS((void)shape_products(plate, corner), InvalidInput);
}

TEST_CASE("the points of a plate carry its mass, with patches and bar")
{
  test::GridPlate grid = {.x = {-0.1, -0.06, 0.0, 0.06, 0.1},
                          .y = {-0.06, -0.003, 0.003, 0.03, 0.06},
                          .surface = test::flat(),
                          .thickness = 3e-3,
                          .under_bar = [](double x, double y) { return std::abs(x) < 0.06 && std::abs(y) < 0.003; }};
  Model model = test::plate_model(test::grid_mesh(grid), test::solid(test::reference_spruce(), 3e-3));
  model.bars = {{.material = test::reference_spruce(),
                 .width = 0.006,
                 .profile = {.station = {-0.06, 0.0, 0.06}, .height = {3e-3, 12e-3, 3e-3}}}};
  model.patches = {{.side = PlateSide::inside,
                    .region = PolygonRegion{{{0.0, 0.003}, {0.1, 0.003}, {0.1, 0.06}, {0.0, 0.06}}},
                    .laminate = test::solid(test::carbon_epoxy(), 0.4e-3)}};
  const double wood = test::reference_spruce().density;
  const double mass = wood * (0.2 * 0.12 * 3e-3 + 0.12 * 0.006 * 7.5e-3) + 1600.0 * 0.1 * 0.057 * 0.4e-3; // [kg]
  const DofMap dofs = number_unknowns(model);
  const ModeShapes shapes = mode_shapes(model, dofs, Eigen::MatrixXd::Zero(dofs.num_equations, 1));
  CHECK(shapes.weight.sum() == doctest::Approx(mass).epsilon(1e-10));
}

TEST_CASE("assignment finds the largest sum that trying all finds")
{
  std::mt19937 random(4);
  std::uniform_real_distribution<double> uniform(0.0, 1.0);
  for (const auto& [rows, columns] :
       {std::pair(1, 1), std::pair(3, 3), std::pair(4, 6), std::pair(6, 6), std::pair(2, 7)})
    for (int repeat = 0; repeat < 20; ++repeat)
    {
      Eigen::MatrixXd score(rows, columns);
      for (double& value : score.reshaped())
        value = std::round(10.0 * uniform(random)) / 10.0; // with ties
      const std::vector<int> assignment = best_assignment(score);
      REQUIRE(assignment.size() == static_cast<std::size_t>(rows));
      std::vector<int> sorted = assignment;
      std::sort(sorted.begin(), sorted.end());
      CHECK(std::adjacent_find(sorted.begin(), sorted.end()) == sorted.end());
      double sum = 0.0;
      for (int row = 0; row < rows; ++row)
        sum += score(row, assignment[static_cast<std::size_t>(row)]);
      CHECK(sum == doctest::Approx(brute_force(score)).epsilon(1e-12));
    }
}

TEST_CASE("the assignment gives up the best pair where that serves the sum")
{
  Eigen::MatrixXd score(2, 2);
  score << 0.9, 0.8, 0.7, 0.1; // greedy: 0.9 + 0.1
  CHECK(best_assignment(score) == std::vector<int>{1, 0});
  CHECK_THROWS_AS((void)best_assignment(Eigen::MatrixXd::Zero(3, 2)), InvalidInput);
}

TEST_CASE("scalar fields are compared over their volume")
{
  // By hand: integrals of 1, x and x^2 over a slab 10 mm high.
  const ShellMesh mesh = test::rectangle(length, width, 2, 1, 0.01);
  Eigen::MatrixXd values(static_cast<Eigen::Index>(mesh.nodes.size()), 2);
  for (Eigen::Index i = 0; i < values.rows(); ++i)
    values.row(i) << 1.0, mesh.nodes[static_cast<std::size_t>(i)].x();
  const Eigen::MatrixXd products = shape_products(scalar_shapes(mesh, values));
  const double volume = length * width * 0.01;
  CHECK(products(0, 0) == doctest::Approx(volume).epsilon(1e-12));
  CHECK(std::abs(products(0, 1)) < 1e-12 * volume * length);
  CHECK(products(1, 1) * 1e3 == doctest::Approx(volume * length * length / 12.0 * 1e3).epsilon(1e-12));
  CHECK_THROWS_AS(static_cast<void>(scalar_shapes(mesh, values.topRows(3))), InvalidInput);
}
