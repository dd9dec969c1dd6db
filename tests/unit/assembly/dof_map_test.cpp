// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <utility>

using namespace plate;

namespace
{

Model sample_plate(double arch = 0.0)
{
  return test::plate_model(test::grid_mesh({.x = {-0.1, -0.02, 0.1},
                                            .y = {-0.05, 0.0, 0.05},
                                            .surface = test::biparabolic(0.2, 0.1, arch),
                                            .thickness = 3e-3}),
                           test::solid(test::reference_spruce(), 3e-3));
}

Eigen::Index num_rigid(const Model& model)
{
  return rigid_motions(model, number_unknowns(model)).cols();
}

Eigen::Index num_rigid(Model model, EdgeSupport support)
{
  test::support_all_sides(model, support);
  return num_rigid(model);
}

} // namespace

TEST_CASE("unknowns are numbered from zero without gaps, and a support holds what it says")
{
  // Of x, y, z and two rotations: rest holds z, hinged x, y, z, clamped all.
  const std::pair<EdgeSupport, std::array<bool, 5>> cases[] = {{EdgeSupport::free, {false, false, false, false, false}},
                                                               {EdgeSupport::rest, {false, false, true, false, false}},
                                                               {EdgeSupport::hinged, {true, true, true, false, false}},
                                                               {EdgeSupport::clamped, {true, true, true, true, true}}};
  for (const auto& [support, held] : cases)
  {
    Model model = sample_plate();
    model.supports = {{.group = "x-", .support = support}};
    const DofMap dofs = number_unknowns(model);
    int next = 0;
    for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i)
    {
      const bool on_side = model.mesh.nodes[i].x() < -0.0999;
      for (std::size_t k = 0; k < 5; ++k)
      {
        const bool is_held = dofs.equation[i][k] == DofMap::held;
        CHECK(is_held == (on_side && held[k]));
        if (!is_held)
          CHECK(dofs.equation[i][k] == next++);
      }
    }
    CHECK(dofs.num_equations == next);
  }
}

TEST_CASE("two supports that meet at a corner both hold it")
{
  Model model = sample_plate();
  model.supports = {{.group = "x-", .support = EdgeSupport::rest}, {.group = "y-", .support = EdgeSupport::clamped}};
  const DofMap dofs = number_unknowns(model);
  for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i)
    if (model.mesh.nodes[i].head<2>().isApprox(Eigen::Vector2d(-0.1, -0.05)))
      CHECK(dofs.equation[i] == std::array<int, 5>{-1, -1, -1, -1, -1});
}

TEST_CASE("supports leave the rigid motions that geometry says")
{
  for (const double arch : {0.0, 0.02})
  {
    CHECK(num_rigid(sample_plate(arch), EdgeSupport::free) == 6);
    CHECK(num_rigid(sample_plate(arch), EdgeSupport::rest) == 3); // along x, along y, about z
    CHECK(num_rigid(sample_plate(arch), EdgeSupport::hinged) == 0);
    CHECK(num_rigid(sample_plate(arch), EdgeSupport::clamped) == 0);
    Model door = sample_plate(arch);
    door.supports = {{.group = "y+", .support = EdgeSupport::hinged}};
    CHECK(num_rigid(door) == 1); // swings on its hinge
    Model shelf = sample_plate(arch);
    shelf.supports = {{.group = "y+", .support = EdgeSupport::rest}};
    CHECK(num_rigid(shelf) == 4); // and swings on the edge it rests on
    Model cantilever = sample_plate(arch);
    cantilever.supports = {{.group = "x+", .support = EdgeSupport::clamped}};
    CHECK(num_rigid(cantilever) == 0);
  }
}

TEST_CASE("the hinge that is left is the turn about the hinged edge")
{
  Model door = sample_plate();
  door.supports = {{.group = "y+", .support = EdgeSupport::hinged}};
  const DofMap dofs = number_unknowns(door);
  const Eigen::Matrix3Xd u = nodal_displacements(dofs, rigid_motions(door, dofs).col(0));
  const double rate = u(2, 0) / (door.mesh.nodes[0].y() - 0.05);
  REQUIRE(std::abs(rate) > 0.0);
  for (std::size_t i = 0; i < door.mesh.nodes.size(); ++i)
  {
    const auto column = static_cast<Eigen::Index>(i);
    CHECK(std::abs(u(2, column) / rate - (door.mesh.nodes[i].y() - 0.05)) < 1e-10); // [m]
    CHECK(std::abs(u(0, column)) < 1e-9 * std::abs(rate));
  }
}
