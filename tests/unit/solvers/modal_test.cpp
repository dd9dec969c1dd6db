// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <Eigen/Eigenvalues>

#include <cmath>
#include <numbers>
#include <string>

using namespace plate;

namespace
{

Model arched_plate()
{
  return test::plate_model(test::grid_mesh({.x = {-0.1, -0.03, 0.04, 0.1},
                                            .y = {-0.05, 0.01, 0.05},
                                            .surface = test::biparabolic(0.2, 0.1, 0.01),
                                            .thickness = 3e-3}),
                           test::solid(test::reference_spruce(), 3e-3, 20, Grain::carved));
}

/// All frequencies, rigid ones included, by a dense solver.
Eigen::VectorXd dense_frequencies(const System& system)
{
  // The dense solver reads lower triangles only, too.
  const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> eigen(
      Eigen::MatrixXd(system.K), Eigen::MatrixXd(system.M), Eigen::EigenvaluesOnly);
  return eigen.eigenvalues().cwiseAbs().cwiseSqrt() / (2.0 * std::numbers::pi);
}

} // namespace

TEST_CASE("modes of a free plate are those of a dense solver, the rigid ones apart")
{
  const System system = assemble(arched_plate());
  const ModalResult modes = solve_modes(system, {.num_modes = 10});
  REQUIRE(modes.status == Status::converged);
  REQUIRE(modes.rigid_frequencies_hz.size() == 6);
  CHECK(modes.rigid_frequencies_hz(5) < 0.05);
  const Eigen::VectorXd all = dense_frequencies(system);
  for (Eigen::Index i = 0; i < 10; ++i)
    CHECK(modes.frequencies_hz(i) == doctest::Approx(all(6 + i)).epsilon(1e-7));
}

TEST_CASE("modes of a held plate are those of a dense solver")
{
  Model model = arched_plate();
  for (const EdgeSupport support : {EdgeSupport::rest, EdgeSupport::hinged, EdgeSupport::clamped})
  {
    model.supports.clear();
    test::support_all_sides(model, support);
    const System system = assemble(model);
    const ModalResult modes = solve_modes(system, {.num_modes = 6});
    const Eigen::Index num_rigid = support == EdgeSupport::rest ? 3 : 0;
    REQUIRE(modes.rigid_frequencies_hz.size() == num_rigid);
    const Eigen::VectorXd all = dense_frequencies(system);
    for (Eigen::Index i = 0; i < 6; ++i)
      CHECK(modes.frequencies_hz(i) == doctest::Approx(all(num_rigid + i)).epsilon(1e-7));
  }
}

TEST_CASE("shapes are orthonormal with the mass, diagonalise the stiffness and hold no rigid motion")
{
  const System system = assemble(arched_plate());
  const ModalResult modes = solve_modes(system, {.num_modes = 8});
  const Eigen::MatrixXd MX = system.M.selfadjointView<Eigen::Lower>() * modes.shapes;
  CHECK((modes.shapes.transpose() * MX).isIdentity(1e-8));
  const Eigen::MatrixXd XKX = modes.shapes.transpose() * (system.K.selfadjointView<Eigen::Lower>() * modes.shapes);
  for (Eigen::Index i = 0; i < 8; ++i)
    CHECK(XKX(i, i) == doctest::Approx(std::pow(2.0 * std::numbers::pi * modes.frequencies_hz(i), 2)).epsilon(1e-7));
  const Eigen::MatrixXd momentum = system.rigid_motions.transpose() * MX;
  CHECK(momentum.cwiseAbs().maxCoeff() < 1e-8 * std::sqrt(system.mass));
  for (Eigen::Index i = 0; i < 8; ++i) // the sign is fixed
    CHECK(modes.shapes.col(i).maxCoeff() >= -modes.shapes.col(i).minCoeff());
}

TEST_CASE("frequencies do not depend on how many are asked for")
{
  const System system = assemble(arched_plate());
  const ModalResult few = solve_modes(system, {.num_modes = 3});
  const ModalResult many = solve_modes(system, {.num_modes = 20});
  CHECK(few.frequencies_hz.isApprox(many.frequencies_hz.head(3), 1e-8));
}

TEST_CASE("a solver kept for further plates gives the same bits as a new one")
{
  ModalSolver solver;
  Model thicker = arched_plate();
  for (double& thickness : thicker.mesh.thickness)
    thickness *= 1.1;
  Model held = arched_plate(); // another pattern
  test::support_all_sides(held, EdgeSupport::clamped);
  for (const Model& model : {arched_plate(), thicker, held, arched_plate()})
  {
    const System system = assemble(model);
    const ModalResult kept = solver.solve(system, {.num_modes = 5});
    const ModalResult fresh = solve_modes(system, {.num_modes = 5});
    CHECK(kept.frequencies_hz == fresh.frequencies_hz);
    CHECK(kept.shapes == fresh.shapes);
  }
}

TEST_CASE("degenerate modes of a square come in pairs")
{
  // Modes of an isotropic square that are not symmetric about its diagonals are double, whatever the mesh's diagonals
  // do up to its own error.
  const Model model =
      test::plate_model(test::rectangle(0.2, 0.2, 8, 8, 3e-3), test::solid(test::isotropic(70e9, 0.3, 2700.0), 3e-3));
  const ModalResult modes = solve_modes(assemble(model), {.num_modes = 8});
  CHECK(modes.frequencies_hz(3) == doctest::Approx(modes.frequencies_hz(4)).epsilon(1e-3));
  CHECK(modes.frequencies_hz(5) == doctest::Approx(modes.frequencies_hz(6)).epsilon(1e-3));
  CHECK(modes.frequencies_hz(4) < 0.8 * modes.frequencies_hz(5));
}

TEST_CASE("a request that cannot be met is refused")
{
  const System system = assemble(arched_plate());
  CHECK_THROWS_AS((void)solve_modes(system, {.num_modes = 0}), InvalidInput);
  CHECK_THROWS_AS((void)solve_modes(system, {.num_modes = system.dofs.num_equations}), InvalidInput);
  CHECK_THROWS_AS((void)solve_modes(system, {.tolerance = 0.0}), InvalidInput);
}

TEST_CASE("running out of restarts is a status, and the summary says so")
{
  const System system =
      assemble(test::plate_model(test::rectangle(0.3, 0.2, 12, 8, 3e-3), test::solid(test::reference_spruce(), 3e-3)));
  const ModalResult modes = solve_modes(system, {.num_modes = 30, .tolerance = 1e-18, .max_restarts = 1});
  CHECK(modes.status == Status::not_converged);
  CHECK(modes.frequencies_hz.size() < 30); // what did converge
  CHECK(modes.summary().find("not converged") != std::string::npos);
}
