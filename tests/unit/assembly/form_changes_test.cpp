// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_models.h"

#include <plate/assembly/form_changes.h>
#include <plate/core/error.h>
#include <plate/core/threads.h>

#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <random>
#include <string>
#include <vector>

using namespace plate;

namespace
{

const std::vector<VectorPair> pairs = {{0, 0}, {1, 1}, {0, 1}};

/// A carved arched plate with everything on it, its footprint of a bar between x = -60 and 60 mm.
Model whole_plate(double arch = 6e-3)
{
  test::GridPlate grid = {.x = {-0.1, -0.06, 0.0, 0.06, 0.1},
                          .y = {-0.05, 0.0, 0.02, 0.03, 0.05},
                          .surface = test::biparabolic(0.2, 0.1, arch),
                          .thickness = 3e-3};
  grid.under_bar = [](double x, double y) { return std::abs(x) < 0.06 && y > 0.02 && y < 0.03; };
  Model model = test::plate_model(test::grid_mesh(grid), test::solid(test::reference_spruce(), 3e-3, 5, Grain::carved));
  model.bars = {
      {.material = test::reference_spruce(), .width = 8e-3, .profile = {{-0.06, 0.0, 0.06}, {4e-3, 10e-3, 4e-3}}}};
  model.patches = {{.region = EllipseRegion{.centre = {-0.06, -0.02}, .axes = {0.03, 0.02}},
                    .laminate = test::solid(test::reference_carbon(), 0.2e-3)}};
  model.masses = {{.at = {0.05, -0.02}, .mass = 2e-3}};
  model.supports = {{"x-", EdgeSupport::hinged}};
  return model;
}

Eigen::MatrixXd random_vectors(int size)
{
  std::mt19937 random(5);
  Eigen::MatrixXd x(size, 2);
  for (double& value : x.reshaped())
    value = static_cast<double>(random()) / 4294967296.0 - 0.5;
  return x;
}

double form(const SparseMatrix& A, const Eigen::MatrixXd& x, const VectorPair& pair)
{
  return x.col(pair.first).dot(A.selfadjointView<Eigen::Lower>() * x.col(pair.second));
}

int num_touched(const FormChanges& changes)
{
  int count = 0;
  for (Eigen::Index t = 0; t < changes.stiffness.cols(); ++t)
    count += changes.stiffness.col(t).isZero(0.0) && changes.mass.col(t).isZero(0.0) ? 0 : 1;
  return count;
}

struct Change
{
  std::string name;
  std::function<void(Model&)> apply;
};

std::vector<Change> all_changes()
{
  return {
      {"modulus", [](Model& m) { m.material.laminate.plies[0].material.elastic.E1 *= 1.1; }},
      {"density", [](Model& m) { m.material.laminate.plies[0].material.density *= 1.1; }},
      {"thickness", [](Model& m) { m.mesh.thickness[7] *= 1.1; }},
      {"arch", [](Model& m) { m.mesh = whole_plate(7e-3).mesh; }},
      {"bar", [](Model& m) { m.bars[0].profile.height[1] = 12e-3; }},
      {"patch", [](Model& m) { m.patches[0].laminate.plies[0].thickness = 0.3e-3; }},
      {"mass", [](Model& m) { m.masses[0].mass = 3e-3; }},
      {"its place", [](Model& m) { m.masses[0].at.y() = 0.01; }},
  };
}

} // namespace

TEST_CASE("changes of the forms are those of assembled matrices")
{
  const Model from = whole_plate();
  const System before = assemble(from);
  const Eigen::MatrixXd x = random_vectors(before.dofs.num_equations);
  for (const Change& change : all_changes())
  {
    CAPTURE(change.name);
    Model to = from;
    change.apply(to);
    const System after = assemble(to);
    const FormChanges changes = form_changes(from, to, before.dofs, x, pairs);
    CHECK(changes.any);
    for (std::size_t k = 0; k < pairs.size(); ++k)
    {
      const auto row = static_cast<Eigen::Index>(k);
      // Rounding of the whole forms is what limits the differences of assembled matrices.
      CHECK(std::abs(changes.stiffness.row(row).sum() - form(after.K, x, pairs[k]) + form(before.K, x, pairs[k])) <
            1e-11 * form(before.K, x, pairs[0]));
      CHECK(std::abs(changes.mass.row(row).sum() + changes.point_mass(row) - form(after.M, x, pairs[k]) +
                     form(before.M, x, pairs[k])) < 1e-11 * form(before.M, x, pairs[0]));
    }
    CHECK(std::abs(changes.triangle_mass.sum() + changes.stuck_on - after.mass + before.mass) < 1e-12 * before.mass);
  }
}

TEST_CASE("only triangles in which something differs are looked at")
{
  const Model from = whole_plate();
  const DofMap dofs = number_unknowns(from);
  const Eigen::MatrixXd x = random_vectors(dofs.num_equations);
  const auto touched = [&](const std::function<void(Model&)>& apply)
  {
    Model to = from;
    apply(to);
    return num_touched(form_changes(from, to, dofs, x, pairs));
  };
  CHECK(touched([](Model& m) { m.bars[0].width = 9e-3; }) == static_cast<int>(from.mesh.bars[0].triangles.size()));
  const int under_patch = touched([](Model& m) { m.patches[0].laminate.plies[0].angle = Angle::degrees(30); });
  CHECK(under_patch > 0);
  CHECK(under_patch < 12); // of 32
  CHECK(touched([](Model& m) { m.material.laminate.plies[0].angle = Angle::degrees(6); }) == 32);
  CHECK(touched([](Model& m) { m.masses[0].mass = 9e-3; }) == 0);
}

TEST_CASE("models that stiffness and mass cannot tell apart have no change")
{
  const Model from = whole_plate();
  Model to = from;
  to.material.laminate.plies[0].material.loss.E1 = 0.5;
  to.bars[0].material.name = "another";
  const DofMap dofs = number_unknowns(from);
  const FormChanges changes = form_changes(from, to, dofs, random_vectors(dofs.num_equations), pairs);
  CHECK_FALSE(changes.any);
  CHECK(num_touched(changes) == 0);
}

TEST_CASE("changes have the same bits on one thread and on three")
{
  const Model from = whole_plate();
  const Model to = whole_plate(7e-3);
  const DofMap dofs = number_unknowns(from);
  const Eigen::MatrixXd x = random_vectors(dofs.num_equations);
  const FormChanges one = form_changes(from, to, dofs, x, pairs);
  set_num_threads(3);
  const FormChanges three = form_changes(from, to, dofs, x, pairs);
  set_num_threads(1);
  CHECK(one.stiffness == three.stiffness);
  CHECK(one.mass == three.mass);
}

TEST_CASE("models on other meshes, with other parts or supports are refused")
{
  const Model from = whole_plate();
  const DofMap dofs = number_unknowns(from);
  const Eigen::MatrixXd x = random_vectors(dofs.num_equations);
  for (const std::function<void(Model&)>& apply :
       std::vector<std::function<void(Model&)>>{[](Model& m) { m.mesh.triangles.pop_back(); },
                                                [](Model& m) { m.bars.clear(); }, [](Model& m) { m.patches.clear(); },
                                                [](Model& m) { m.supports[0].support = EdgeSupport::clamped; }})
  {
    Model to = from;
    apply(to);
    CHECK_THROWS_AS(static_cast<void>(form_changes(from, to, dofs, x, pairs)), InvalidInput);
  }
}
