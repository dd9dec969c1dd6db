// SPDX-License-Identifier: MPL-2.0
// Masses stuck on a plate, as makers do with clay.
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/locate.h>
#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

namespace
{

/// A free arched plate of spruce: 78 g at scale 1, the size of a viola's.
Model arched_spruce(double scale = 1.0)
{
  test::GridPlate grid = {.x = test::lines_with_strips(0.175 * scale, 8, 3e-3),
                          .y = test::lines_with_strips(0.1 * scale, 5, 3e-3),
                          .surface = test::biparabolic(0.35 * scale, 0.2 * scale, 0.015 * scale),
                          .thickness = 2.8e-3};
  return test::plate_model(test::grid_mesh(grid), test::solid(test::reference_spruce(), 2.8e-3, 0.0, Grain::carved));
}

/// Squared displacement of each mode at a place; the modes have unit modal mass [1/kg].
Eigen::VectorXd squared_displacement(const Model& model, const System& system, const Eigen::MatrixXd& shapes,
                                     const Eigen::Vector2d& at)
{
  const MeshPoint point = locate(model.mesh, at).value();
  const CubicTriangle::Vector N = CubicTriangle::shape(point.xi, point.eta);
  Eigen::VectorXd squares(shapes.cols());
  for (Eigen::Index mode = 0; mode < shapes.cols(); ++mode)
  {
    const Eigen::Matrix3Xd u = nodal_displacements(system.dofs, shapes.col(mode));
    Eigen::Vector3d there = Eigen::Vector3d::Zero();
    for (int i = 0; i < CubicTriangle::num_nodes; ++i)
      there += N(i) * u.col(model.mesh.triangles[point.triangle][static_cast<std::size_t>(i)]);
    squares(mode) = there.squaredNorm();
  }
  return squares;
}

/// Frequencies with a mass over those without, minus one.
Eigen::VectorXd relative_shift(Model model, const Eigen::VectorXd& without, const PointMass& mass)
{
  model.masses = {mass};
  const Eigen::VectorXd with = solve_modes(assemble(model), {.num_modes = 8}).frequencies_hz;
  return with.cwiseQuotient(without).array() - 1.0;
}

} // namespace

TEST_CASE("a small mass lowers each mode by half its share of the modal energy")
{
  // Rayleigh's quotient to first order: df/f = -m phi^2 / (2 M_n), M_n = 1 here; second order is of the size of the
  // shift itself, more where two modes lie close
  // together and mix. 2 mg on 80 g.
  const Model model = arched_spruce();
  const System system = assemble(model);
  const ModalResult bare = solve_modes(system, {.num_modes = 8});
  const double m = 2e-6;
  for (const Eigen::Vector2d& at :
       {Eigen::Vector2d(0.04, 0.03), Eigen::Vector2d(-0.17, 0.095), Eigen::Vector2d(0.1, 0.0)})
  {
    const Eigen::VectorXd shift = relative_shift(model, bare.frequencies_hz, {at, m});
    const Eigen::VectorXd rayleigh = -0.5 * m * squared_displacement(model, system, bare.shapes, at);
    for (Eigen::Index mode = 0; mode < 8; ++mode)
    {
      CAPTURE(mode);
      CHECK(std::abs(shift(mode) - rayleigh(mode)) < 0.1 * std::abs(rayleigh(mode)) + 1e-8);
    }
    CHECK(shift.minCoeff() < -5e-6); // there is something to see
  }
}

TEST_CASE("five grams of clay lower each mode of a large plate as Rayleigh says, and never raise one")
{
  // 350 g, 1.4 % of it in clay: second order is below a tenth of the shift where modes lie well apart.
  const Model model = arched_spruce(2.1);
  const System system = assemble(model);
  const ModalResult bare = solve_modes(system, {.num_modes = 8});
  const Eigen::VectorXd& f = bare.frequencies_hz;
  REQUIRE(f(1) > 1.15 * f(0));
  int checked = 0;
  for (const double x : {-0.3, -0.2, -0.1, 0.15, 0.25, 0.32})
    for (const double y : {-0.15, -0.08, 0.1, 0.18})
    {
      const Eigen::VectorXd shift = relative_shift(model, f, {{x, y}, 5e-3});
      const Eigen::VectorXd rayleigh = -0.5 * 5e-3 * squared_displacement(model, system, bare.shapes, {x, y});
      CHECK(shift.maxCoeff() < 1e-9);
      if (rayleigh(0) > -1e-3 || rayleigh(0) < -0.025)
        continue; // next to nothing moves there, or at a corner so much that the shift is no longer small
      CHECK(std::abs(shift(0) - rayleigh(0)) < 0.1 * std::abs(rayleigh(0)));
      ++checked;
    }
  CHECK(checked > 10);
}

TEST_CASE("a mass counts in the weight and moves the centre of gravity")
{
  Model model = arched_spruce();
  const System bare = assemble(model);
  model.masses = {{{0.1, 0.05}, 0.02}};
  const System loaded = assemble(model);
  CHECK(loaded.mass == doctest::Approx(bare.mass + 0.02).epsilon(1e-12));
  const Eigen::Vector3d place(0.1, 0.05, 0.015 * (1.0 - std::pow(0.2 / 0.35, 2)) * (1.0 - std::pow(0.1 / 0.2, 2)));
  const Eigen::Vector3d expected = (bare.mass * bare.centre_of_gravity + 0.02 * place) / loaded.mass;
  CHECK((loaded.centre_of_gravity - expected).norm() < 1e-6);
}

TEST_CASE("a mass beside the plate is refused")
{
  Model model = arched_spruce();
  model.masses = {{{0.2, 0.0}, 0.005}};
  CHECK_THROWS_WITH_AS(static_cast<void>(assemble(model)), doctest::Contains("beside the plate"), InvalidInput);
  model.masses = {{{0.0, 0.0}, -0.005}};
  CHECK_THROWS_AS(static_cast<void>(assemble(model)), InvalidInput);
}
