// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/solvers/sparse_cholesky.h>
#include <plate/solvers/static_shapes.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

Model clamped_strip()
{
  Model model =
      test::plate_model(test::rectangle(0.3, 0.04, 12, 2, 3e-3), test::solid(test::isotropic(10e9, 0.3, 500.0), 3e-3));
  model.supports.push_back({.group = "x-", .support = EdgeSupport::clamped});
  return model;
}

/// A force on one unknown.
Eigen::MatrixXd force_on(const System& system, Eigen::Index unknown)
{
  Eigen::MatrixXd load = Eigen::MatrixXd::Zero(system.K.rows(), 1);
  load(unknown, 0) = 1.0;
  return load;
}

/// Static compliance of a few shapes.
double compliance(const ModalResult& modes, const Eigen::MatrixXd& load)
{
  const Eigen::VectorXd answer = modes.shapes.transpose() * load.col(0);
  return answer.cwiseQuotient(2.0 * std::numbers::pi * modes.frequencies_hz).squaredNorm();
}

} // namespace

TEST_CASE("with their static shape few modes give the whole deflection under a force")
{
  const System system = assemble(clamped_strip());
  const Eigen::MatrixXd load = force_on(system, system.K.rows() / 2);
  ModalSolver solver;
  const ModalResult few = solver.solve(system, {.num_modes = 3});
  const ModalResult more = with_static_shapes(solver, system, few, load);
  CHECK(more.shapes.cols() == 4);
  CHECK(more.frequencies_hz(3) > few.frequencies_hz(2));
  const SparseCholesky factor(system.K, unknowns_by_node(system.dofs));
  Eigen::MatrixXd x(load.rows(), 1);
  factor.solve(load, x);
  const double whole = load.col(0).dot(x.col(0)); // by solving for it
  CHECK(compliance(more, load) == test::relative(whole, 1e-4));
  CHECK(compliance(few, load) < 0.999 * whole);
}

TEST_CASE("further shapes have unit mass and are orthogonal to the others, rigid motions too")
{
  const Model model =
      test::plate_model(test::rectangle(0.3, 0.2, 6, 4, 3e-3), test::solid(test::isotropic(10e9, 0.3, 500.0), 3e-3));
  const System system = assemble(model);
  Eigen::MatrixXd loads(system.K.rows(), 3);
  loads << force_on(system, 7), force_on(system, 202), force_on(system, 7); // one of them twice
  ModalSolver solver;
  const ModalResult modes = solver.solve(system, {.num_modes = 4});
  const ModalResult more = with_static_shapes(solver, system, modes, loads);
  CHECK(more.shapes.cols() == 6);
  const Eigen::MatrixXd gram = more.shapes.transpose() * (system.M.selfadjointView<Eigen::Lower>() * more.shapes);
  CHECK((gram - Eigen::MatrixXd::Identity(6, 6)).cwiseAbs().maxCoeff() < 1e-8);
  const Eigen::MatrixXd rigid =
      system.rigid_motions.transpose() * (system.M.selfadjointView<Eigen::Lower>() * more.shapes);
  CHECK(rigid.cwiseAbs().maxCoeff() < 1e-8);
  CHECK_THROWS_AS(static_cast<void>(with_static_shapes(solver, system, more, Eigen::MatrixXd::Zero(3, 1))),
                  InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(with_static_shapes(ModalSolver(), system, modes, loads)), InvalidInput);
}

TEST_CASE("rigid motions of a free plate as modes carry its mass and no energy")
{
  const Model model =
      test::plate_model(test::rectangle(0.3, 0.2, 3, 2, 3e-3), test::solid(test::isotropic(10e9, 0.3, 500.0), 3e-3));
  const System system = assemble(model);
  const Eigen::MatrixXd rigid = unit_rigid_motions(system);
  REQUIRE(rigid.cols() == 6);
  const Eigen::MatrixXd gram = rigid.transpose() * (system.M.selfadjointView<Eigen::Lower>() * rigid);
  CHECK((gram - Eigen::MatrixXd::Identity(6, 6)).cwiseAbs().maxCoeff() < 1e-10);
  // At the middle of a plate of mass m a force along z feels the mass alone: sum of the squares of z there is 1 / m.
  Eigen::Index middle = 0;
  for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i)
    if (model.mesh.nodes[i].norm() < model.mesh.nodes[static_cast<std::size_t>(middle)].norm())
      middle = static_cast<Eigen::Index>(i);
  double at_middle = 0.0;
  for (const auto& motion : rigid.colwise())
    at_middle += std::pow(nodal_displacements(system.dofs, motion)(2, middle), 2);
  const Eigen::Vector3d at = model.mesh.nodes[static_cast<std::size_t>(middle)];
  const double mass = 500.0 * 0.3 * 0.2 * 3e-3;
  const double tilt = at.x() * at.x() / (0.3 * 0.3 / 12.0) + at.y() * at.y() / (0.2 * 0.2 / 12.0);
  CHECK(at_middle == test::relative((1.0 + tilt) / mass, 1e-3)); // rotary inertia adds 1e-4 to the tilt
}
