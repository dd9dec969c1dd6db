// SPDX-License-Identifier: MPL-2.0
// Patches, plies with directions of their own and stuck-on masses in the assembled matrices.
#include "sample_models.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace plate;

namespace
{

/// An arched laminate with patches on both faces, one cut by the edge of the plate, and two masses.
Model model_with_parts()
{
  test::GridPlate grid = {.x = test::lines_with_strips(0.1, 4, 2e-3),
                          .y = test::lines_with_strips(0.06, 3, 2e-3),
                          .surface = test::biparabolic(0.2, 0.12, 0.012),
                          .thickness = 0.6e-3};
  Model model = test::plate_model(test::grid_mesh(grid), test::stack(test::carbon_epoxy(), 0.2e-3, {0, 60, 90}));
  model.patches = {{.side = PlateSide::inside,
                    .region = EllipseRegion{.centre = {0.09, 0.01}, .axes = {0.05, 0.04}, .angle = Angle::degrees(20)},
                    .laminate = test::stack(test::carbon_epoxy(), 0.1e-3, {45, 0})},
                   {.side = PlateSide::outside,
                    .region = PolygonRegion{{{-0.05, -0.03}, {0.02, -0.02}, {-0.03, 0.04}}},
                    .laminate = test::stack(test::carbon_epoxy(), 0.15e-3, {30})}};
  model.directions = {{.ply = 1, .double_angle = {}}};
  for (const Eigen::Vector3d& node : model.mesh.nodes)
    model.directions[0].double_angle.emplace_back(std::cos(8.0 * node.x()), std::sin(8.0 * node.x()));
  model.masses = {{{0.03, 0.02}, 2e-3}, {{-0.07, -0.05}, 1e-3}};
  return model;
}

} // namespace

TEST_CASE("rigid motions of a plate with patches, directed plies and masses carry no strain energy")
{
  const Model model = model_with_parts();
  const System system = assemble(model);
  const Eigen::MatrixXd& R = system.rigid_motions;
  REQUIRE(R.cols() == 6);
  const Eigen::MatrixXd KR = system.K.selfadjointView<Eigen::Lower>() * R;
  // Against the energy of the same numbers with every second one turned round.
  Eigen::MatrixXd bent = R;
  for (Eigen::Index i = 0; i < bent.rows(); i += 2)
    bent.row(i) *= -1.0;
  const Eigen::MatrixXd K_bent = system.K.selfadjointView<Eigen::Lower>() * bent;
  for (int k = 0; k < 6; ++k)
    CHECK(std::abs(R.col(k).dot(KR.col(k))) < 1e-11 * bent.col(k).dot(K_bent.col(k)));
}

TEST_CASE("a shift of the whole plate has the momentum of all its parts")
{
  const Model model = model_with_parts();
  const System system = assemble(model);
  const Eigen::MatrixXd momentum =
      system.rigid_motions.transpose() * (system.M.selfadjointView<Eigen::Lower>() * system.rigid_motions);
  for (int k = 0; k < 3; ++k)
    CHECK(momentum(k, k) == doctest::Approx(system.mass).epsilon(1e-10));
  Model bare = model;
  bare.masses.clear();
  CHECK(system.mass - assemble(bare).mass == doctest::Approx(3e-3).epsilon(1e-9));
  bare.patches.pop_back(); // the polygon lies inside the plate; the arch makes its area a little larger than in plan
  Model patched = model;
  patched.masses.clear();
  const double patch = assemble(patched).mass - assemble(bare).mass;
  const double in_plan = 1600.0 * 0.15e-3 * region_area(model.patches[1].region);
  CHECK(patch > in_plan);
  CHECK(patch < 1.05 * in_plan);
}

TEST_CASE("what covers a triangle: a patch ends in few of them and covers or leaves out the others")
{
  const Model model = model_with_parts();
  const std::vector<TriangleCover> covers = triangle_covers(model);
  int cut = 0;
  for (std::size_t t = 0; t < covers.size(); ++t)
  {
    cut += covers[t].patch_edge ? 1 : 0;
    if (covers[t].patch_edge)
      continue;
    for (std::size_t i = 0; i < model.patches.size(); ++i)
      for (const int node : model.mesh.triangles[t])
      {
        const bool covered = std::find(covers[t].patches.begin(), covers[t].patches.end(), static_cast<int>(i)) !=
                             covers[t].patches.end();
        const Eigen::Vector2d place = model.mesh.nodes[static_cast<std::size_t>(node)].head<2>();
        CHECK(contains(model.patches[i].region, place) == covered);
      }
  }
  CHECK(cut > 0);
  CHECK(cut < static_cast<int>(covers.size()));
}
