// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <limits>
#include <string>
#include <vector>

using namespace plate;

namespace
{

Model sample()
{
  test::GridPlate grid = {.x = {-0.1, 0.0, 0.1}, .y = {-0.05, 0.0, 0.05}, .surface = test::flat(), .thickness = 3e-3};
  grid.under_bar = [](double, double y) { return y > 0.0; };
  Model model = test::plate_model(test::grid_mesh(grid), test::solid(test::reference_spruce(), 3e-3));
  model.bars = {{.material = test::reference_spruce(), .width = 0.05, .profile = {{-0.1, 0.1}, {4e-3, 6e-3}}}};
  return model;
}

std::string complaint(const Model& model)
{
  try
  {
    check_model(model);
  }
  catch (const InvalidInput& error)
  {
    return error.what();
  }
  return "";
}

template <class Change>
bool complains_of(const std::string& words, Change change)
{
  Model model = sample();
  change(model);
  return complaint(model).find(words) != std::string::npos;
}

} // namespace

TEST_CASE("a sound model passes")
{
  CHECK(complaint(sample()) == "");
}

TEST_CASE("each way to break a model is named")
{
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK(complains_of("equal sizes", [](Model& m) { m.mesh.normals.pop_back(); }));
  CHECK(complains_of("not finite", [&](Model& m) { m.mesh.nodes[3].y() = nan; }));
  CHECK(complains_of("normal of node 2 must have length 1", [](Model& m) { m.mesh.normals[2] *= 1.01; }));
  CHECK(complains_of("thickness at node 5", [&](Model& m) { m.mesh.thickness[5] = nan; }));
  CHECK(complains_of("thickness at node 5", [](Model& m) { m.mesh.thickness[5] = 0.0; }));
  CHECK(complains_of("no triangles", [](Model& m) { m.mesh.triangles.clear(); }));
  CHECK(complains_of("refers to node 999", [](Model& m) { m.mesh.triangles[1][4] = 999; }));
  CHECK(complains_of("refers to node -1", [](Model& m) { m.mesh.triangles[1][4] = -1; }));
  CHECK(complains_of("belongs to no triangle",
                     [](Model& m)
                     {
                       m.mesh.nodes.emplace_back(0.0, 0.0, 0.0);
                       m.mesh.normals.emplace_back(0.0, 0.0, 1.0);
                       m.mesh.thickness.push_back(1e-3);
                     }));
  CHECK(complains_of("1 bars but 0 footprints", [](Model& m) { m.mesh.bars.clear(); }));
  CHECK(complains_of("ascending stations", [](Model& m) { m.bars[0].profile.station = {0.1, -0.1}; }));
  CHECK(complains_of("ascending stations", [](Model& m) { m.bars[0].profile.height.pop_back(); }));
  CHECK(complains_of("heights and width", [](Model& m) { m.bars[0].profile.height[0] = 0.0; }));
  CHECK(complains_of("heights and width", [](Model& m) { m.bars[0].width = -1.0; }));
  CHECK(complains_of("station for each", [](Model& m) { m.mesh.bars[0].station.pop_back(); }));
  CHECK(complains_of("E1 must be positive", [](Model& m) { m.bars[0].material.elastic.E1 = 0.0; }));
  CHECK(complains_of("at least one ply", [](Model& m) { m.material.laminate.plies.clear(); }));
  CHECK(complains_of("no boundary group is called 'rim'",
                     [](Model& m) { m.supports.push_back({.group = "rim", .support = EdgeSupport::clamped}); }));
}

TEST_CASE("elements get the nodes of their triangle and the bar above which they lie")
{
  const Model model = sample();
  const std::vector<TriangleCover> covers = triangle_covers(model);
  int under = 0;
  for (std::size_t t = 0; t < covers.size(); ++t)
  {
    const ElementInput input = element_input(model, t, covers[t]);
    const bool upper_half = input.nodes.position.row(1).mean() > 0.0;
    CHECK((covers[t].bar == 0) == upper_half);
    CHECK((input.parts.bar != nullptr) == upper_half);
    if (upper_half)
      CHECK(input.nodes.station.isApprox(input.nodes.position.row(0)));
    under += upper_half ? 1 : 0;
  }
  CHECK(under == 4);
}
