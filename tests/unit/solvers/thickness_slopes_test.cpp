// SPDX-License-Identifier: MPL-2.0
#include "knobs.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <vector>

using namespace plate;
using test::mismatch;

namespace
{

constexpr double thickness = 2.6e-3; // [m]

/// @param cells  along the body; two thirds of them across
Model carved_plate(int cells)
{
  test::GridPlate grid = {.x = test::lines_with_strips(0.15, cells, 0.004),
                          .y = test::lines_with_strips(0.09, cells * 2 / 3, 0.004),
                          .surface = test::biparabolic(0.3, 0.18, 0.012),
                          .thickness = thickness};
  return test::plate_model(test::grid_mesh(grid), test::solid(test::reference_spruce(), thickness, 7.0, Grain::carved));
}

/// Slopes by a change of the thickness that varies over the plate.
template <class Pattern>
Eigen::VectorXd slopes_by(const Model& base, const Pattern& pattern, int num_modes)
{
  test::ChangedPlate design(base,
                            [base, pattern](std::span<const double> values, Model& model)
                            {
                              model = base;
                              for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i)
                                model.mesh.thickness[i] += values[0] * pattern(model.mesh.nodes[i]);
                            });
  const std::vector<SensitivityParameter> parameters = {{.value = 0.0, .scale = thickness}};
  return sensitivities(design, parameters, {.num_modes = num_modes}).parameters[0].slopes_hz;
}

/// Integral over the plate of the slopes times a change of the thickness.
template <class Pattern>
Eigen::VectorXd integral(const Model& model, const Eigen::MatrixXd& slopes, const Pattern& pattern)
{
  const Eigen::VectorXd areas = nodal_areas(model.mesh);
  Eigen::VectorXd sum = Eigen::VectorXd::Zero(slopes.cols());
  for (Eigen::Index i = 0; i < slopes.rows(); ++i)
    sum += areas(i) * pattern(model.mesh.nodes[static_cast<std::size_t>(i)]) * slopes.row(i).transpose();
  return sum;
}

struct Solved
{
  System system;
  ModalResult modes;

  Solved(const Model& model, int num_modes)
      : system(assemble(model)), modes(solve_modes(system, {.num_modes = num_modes, .tolerance = 1e-10}))
  {
  }
};

} // namespace

TEST_CASE("the map of thickness adds up to the derivative by the thickness of the whole plate")
{
  const Model model = carved_plate(6);
  const Solved solved(model, 5);
  const Eigen::MatrixXd slopes = thickness_slopes(model, solved.system.dofs, solved.modes);
  REQUIRE(slopes.rows() == static_cast<Eigen::Index>(model.mesh.nodes.size()));
  const auto even = [](const Eigen::Vector3d&) { return 1.0; };
  CHECK(mismatch(integral(model, slopes, even), slopes_by(model, even, 5)) < 1e-6);
}

TEST_CASE("the map of thickness tells what thickness in one place does, to second order in the size of triangles")
{
  const auto hump = [](const Eigen::Vector3d& x)
  { return std::exp(-(Eigen::Vector2d(x.x() - 0.05, x.y() + 0.02) / 0.05).squaredNorm()); };
  const auto error = [&](int cells)
  {
    const Model model = carved_plate(cells);
    const Solved solved(model, 5);
    const Eigen::MatrixXd slopes = thickness_slopes(model, solved.system.dofs, solved.modes);
    return mismatch(integral(model, slopes, hump), slopes_by(model, hump, 5));
  };
  const double coarse = error(9);
  const double fine = error(18); // 16 mm
  CHECK(fine < 0.03);
  CHECK(fine < coarse / 3.0); // second order: a quarter
}

TEST_CASE("cores do not count as thickness, unless there is nothing else")
{
  const Material core = []
  {
    Material m = test::reference_balsa();
    m.core = true;
    return m;
  }();
  const double skin = 0.3e-3;
  const Laminate sandwich = {{{test::reference_carbon(), skin}, {core, 2e-3}, {test::reference_carbon(), skin}}};
  const ShellMesh mesh = test::rectangle(0.3, 0.2, 5, 4, 2e-3 + 2.0 * skin);
  const Model model = test::plate_model(mesh, sandwich);
  const Solved solved(model, 4);
  const Eigen::MatrixXd slopes = thickness_slopes(model, solved.system.dofs, solved.modes);

  // By full solves: both skins thicker by the same, the core as it is.
  const auto frequencies = [&](double more)
  {
    Laminate other = sandwich;
    other.plies[0].thickness += 0.5 * more;
    other.plies[2].thickness += 0.5 * more;
    Model changed = test::plate_model(mesh, other);
    changed.mesh.thickness.assign(mesh.nodes.size(), total_thickness(other));
    return Solved(changed, 4).modes.frequencies_hz;
  };
  const double step = 1e-6; // [m]
  const Eigen::VectorXd expected = (frequencies(step) - frequencies(-step)) / (2.0 * step);
  const auto even = [](const Eigen::Vector3d&) { return 1.0; };
  CHECK(mismatch(integral(model, slopes, even), expected) < 1e-5);

  const Model bare = test::plate_model(test::rectangle(0.3, 0.2, 5, 4, 2e-3), test::solid(core, 2e-3));
  const Solved of_core(bare, 4);
  const Eigen::VectorXd whole = integral(bare, thickness_slopes(bare, of_core.system.dofs, of_core.modes), even);
  CHECK(mismatch(whole, slopes_by(bare, even, 4)) < 1e-6);
}

TEST_CASE("the map refuses modes of another model")
{
  const Model model = carved_plate(6);
  const Solved solved(model, 3);
  ModalResult other = solved.modes;
  other.frequencies_hz.conservativeResize(2);
  CHECK_THROWS_AS(static_cast<void>(thickness_slopes(model, solved.system.dofs, other)), InvalidInput);
}
