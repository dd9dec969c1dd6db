// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/core/threads.h>

#include <doctest/doctest.h>

#include <Eigen/SparseCholesky>

#include <cmath>
#include <random>
#include <vector>

using namespace plate;

namespace
{

constexpr double length = 0.2;     // [m]
constexpr double width = 0.1;      // [m]
constexpr double thickness = 3e-3; // [m]

/// Bar along x, 10 mm wide from y = 20 to 30 mm, between x = -60 and 60 mm, 4 mm high at its ends and 10 in the middle.
Model barred_plate(double arch)
{
  test::GridPlate grid = {.x = {-0.1, -0.06, 0.0, 0.06, 0.1},
                          .y = {-0.05, 0.0, 0.02, 0.03, 0.05},
                          .surface = test::biparabolic(length, width, arch),
                          .thickness = thickness};
  grid.under_bar = [](double x, double y) { return std::abs(x) < 0.06 && y > 0.02 && y < 0.03; };
  Model model =
      test::plate_model(test::grid_mesh(grid), test::solid(test::reference_spruce(), thickness, 0, Grain::carved));
  model.bars = {
      {.material = test::reference_spruce(), .width = 0.01, .profile = {{-0.06, 0.0, 0.06}, {4e-3, 10e-3, 4e-3}}}};
  return model;
}

bool same_bits(const System& a, const System& b)
{
  const auto values = [](const SparseMatrix& m)
  { return Eigen::Map<const Eigen::VectorXd>(m.valuePtr(), m.nonZeros()); };
  return a.K.nonZeros() == b.K.nonZeros() && values(a.K) == values(b.K) && values(a.M) == values(b.M) &&
         a.mass == b.mass && a.centre_of_gravity == b.centre_of_gravity;
}

} // namespace

TEST_CASE("stiffness and mass store one lower triangle of the same pattern")
{
  const System system = assemble(barred_plate(0.01));
  REQUIRE(system.K.rows() == system.dofs.num_equations);
  REQUIRE(system.K.nonZeros() == system.M.nonZeros());
  for (int column = 0; column < system.K.outerSize(); ++column)
  {
    SparseMatrix::InnerIterator m(system.M, column);
    for (SparseMatrix::InnerIterator k(system.K, column); k; ++k, ++m)
    {
      REQUIRE(k.row() >= column);
      REQUIRE(k.row() == m.row());
    }
    CHECK(system.K.coeff(column, column) > 0.0);
    CHECK(system.M.coeff(column, column) > 0.0);
  }
  const Eigen::SimplicialLLT<SparseMatrix> cholesky(system.M);
  CHECK(cholesky.info() == Eigen::Success);
}

TEST_CASE("assembled energies are the sums of the elements' energies")
{
  Model model = barred_plate(0.01);
  model.supports = {{.group = "x-", .support = EdgeSupport::hinged}};
  const System system = assemble(model);
  std::mt19937 random(2);
  std::uniform_real_distribution<double> uniform(-1.0, 1.0);
  Eigen::VectorXd u(system.dofs.num_equations);
  for (double& value : u)
    value = uniform(random);
  double strain_energy = 0.0;
  double kinetic_energy = 0.0;
  const std::vector<TriangleCover> covers = triangle_covers(model);
  for (std::size_t t = 0; t < model.mesh.triangles.size(); ++t)
  {
    Eigen::Matrix<double, 50, 1> element_u;
    for (std::size_t i = 0; i < 10; ++i)
      for (std::size_t k = 0; k < 5; ++k)
      {
        const int equation = system.dofs.equation[static_cast<std::size_t>(model.mesh.triangles[t][i])][k];
        element_u(static_cast<Eigen::Index>(5 * i + k)) = equation == DofMap::held ? 0.0 : u(equation);
      }
    const ElementInput input = element_input(model, t, covers[t]);
    ShellTriangle::Matrix K, M;
    ShellTriangle::stiffness(input.nodes, model.material, input.parts, K);
    ShellTriangle::mass(input.nodes, model.material, input.parts, M);
    strain_energy += element_u.dot(K * element_u);
    kinetic_energy += element_u.dot(M * element_u);
  }
  CHECK(u.dot(system.K.selfadjointView<Eigen::Lower>() * u) == doctest::Approx(strain_energy).epsilon(1e-11));
  CHECK(u.dot(system.M.selfadjointView<Eigen::Lower>() * u) == doctest::Approx(kinetic_energy).epsilon(1e-11));
}

TEST_CASE("mass and centre of gravity of a flat plate with a bar have a closed form")
{
  const System system = assemble(barred_plate(0.0));
  const double rho = 400.0;
  const double plate = rho * length * width * thickness;
  // Bar: mean height 7 mm; its centre lies half the plate and half the height below: mean of h (t + h)/2 along it, and
  // the mean of h^2 of a straight line from 4 to 10 is (16 + 40 + 100)/3 = 52 mm2.
  const double bar = rho * 0.12 * 0.01 * 7e-3;
  const double bar_moment_z = -rho * 0.12 * 0.01 * 0.5 * (thickness * 7e-3 + 52e-6);
  CHECK(system.mass == doctest::Approx(plate + bar).epsilon(1e-12));
  CHECK(std::abs(system.centre_of_gravity.x()) < 1e-12);
  CHECK(system.centre_of_gravity.y() == doctest::Approx(bar * 0.025 / (plate + bar)).epsilon(1e-11));
  CHECK(system.centre_of_gravity.z() == doctest::Approx(bar_moment_z / (plate + bar)).epsilon(1e-11));
}

TEST_CASE("supports do not change the mass")
{
  Model model = barred_plate(0.01);
  const double mass = assemble(model).mass;
  test::support_all_sides(model, EdgeSupport::clamped);
  CHECK(assemble(model).mass == mass);
}

TEST_CASE("rigid motions of an arched plate with a bar carry no energy")
{
  const System system = assemble(barred_plate(0.01));
  const Eigen::MatrixXd KR = system.K.selfadjointView<Eigen::Lower>() * system.rigid_motions;
  CHECK(KR.cwiseAbs().maxCoeff() < 1e-12 * Eigen::VectorXd(system.K.diagonal()).maxCoeff());
}

TEST_CASE("the same model gives the same bits, on several threads too")
{
  const System a = assemble(barred_plate(0.01));
  set_num_threads(3);
  const System b = assemble(barred_plate(0.01));
  set_num_threads(1);
  CHECK(same_bits(a, b));
  CHECK_THROWS_AS(set_num_threads(0), InvalidInput);
}

TEST_CASE("what assembly keeps between models does not change them")
{
  Model thicker = barred_plate(0.01);
  for (double& nodal : thicker.mesh.thickness)
    nodal *= 1.1;
  Model held = barred_plate(0.01);
  held.supports = {{.group = "x-", .support = EdgeSupport::hinged}};
  Assembler assembler;
  for (const Model& model : {barred_plate(0.01), thicker, held, barred_plate(0.02)})
    CHECK(same_bits(assembler.assemble(model), assemble(model)));
}

TEST_CASE("the typical frequency is the first bending frequency of a free strip")
{
  // Free beam: 22.373 / (2 pi L^2) sqrt(D/m), L the diagonal of the plate, D the mean of both directions.
  const Model model =
      test::plate_model(test::rectangle(0.3, 0.3, 2, 2, 3e-3), test::solid(test::isotropic(70e9, 0.0, 2700.0), 3e-3));
  const double D = 70e9 * 27e-9 / 12.0;
  CHECK(assemble(model).typical_frequency_hz ==
        doctest::Approx(22.373 / (2.0 * 3.14159265 * 0.18) * std::sqrt(D / (2700.0 * 3e-3))).epsilon(2e-3));
}
