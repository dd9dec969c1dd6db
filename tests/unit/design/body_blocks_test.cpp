// SPDX-License-Identifier: MPL-2.0
#include "relative.h"

#include <plate/assembly/assemble.h>
#include <plate/design/body_document.h>
#include <plate/design/build_body.h>
#include <plate/materials/library.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

using namespace plate;
using test::relative;

namespace
{

BodyModel demo_body(const std::string& blocks)
{
  BodyDocument document =
      BodyDocument::from_file(std::filesystem::path(EXAMPLES_DIR) / "viola" / "body" / "wooden_body.toml");
  document.set("mesh.size", "40");
  document.set("blocks.end", blocks);
  return build_body(document.design());
}

const std::vector<std::size_t> plates = {BodyModel::top, BodyModel::back};

} // namespace

TEST_CASE("both plates are glued to the blocks over their footprint")
{
  const BodyModel body = demo_body("[52.0, 16.0]");
  for (const std::size_t part : plates)
  {
    const std::vector<Patch>& patches = body.body.parts[part].model.patches;
    const auto glued = [&](double x, double y)
    {
      return std::any_of(patches.begin(), patches.end(),
                         [&](const Patch& patch) {
                           return contains(patch.region, {1e-3 * x, 1e-3 * y});
                         });
    };
    // By hand: 202.5 mm from the middle to the edge, less 2.5 mm over ribs of 1.2 mm: blocks from 198.8 to 182.8 mm.
    for (const double end : {-1.0, 1.0})
    {
      CHECK(glued(end * 183.0, 0.0));
      CHECK(glued(end * 198.0, 25.0));
      CHECK(glued(end * 198.0, -25.0));
      CHECK_FALSE(glued(end * 182.0, 0.0));
      CHECK_FALSE(glued(end * 190.0, 27.0));
      CHECK_FALSE(glued(end * 190.0, -27.0));
    }
    for (const Patch& patch : patches)
    {
      CHECK(patch.side == PlateSide::inside);
      CHECK(1e3 * total_thickness(patch.laminate) == relative(16.0)); // half of 36.5 or 38 mm would be more
    }
  }
}

TEST_CASE("the grain of a block stands on the plates")
{
  // The same solid, turned: its axes 1, 2, 3 are the plate's 3, 1, 2.
  const Eigen::Matrix<double, 6, 6> wood = compliance(find_material("spruce")->elastic);
  const Eigen::Matrix<double, 6, 6> block = compliance(demo_body("[52.0, 16.0]")
                                                           .body.parts[BodyModel::back]
                                                           .model.patches.front()
                                                           .laminate.plies.front()
                                                           .material.elastic);
  constexpr int axis[] = {1, 2, 0};  // of the wood, along the plate's 1, 2, 3
  constexpr int shear[] = {4, 5, 3}; // of the wood (order 23, 13, 12), as the plate's 23, 13, 12
  for (int i = 0; i < 3; ++i)
  {
    CHECK(block(3 + i, 3 + i) == relative(wood(shear[i], shear[i])));
    for (int j = 0; j < 3; ++j)
      CHECK(block(i, j) == relative(wood(axis[i], axis[j])));
  }
}

TEST_CASE("gluing the blocks adds no mass to a plate, and a body without them has none")
{
  const BodyModel glued = demo_body("[52.0, 16.0]");
  const BodyModel bare = demo_body("[0.0, 0.0]");
  for (const std::size_t part : plates)
  {
    CHECK(bare.body.parts[part].model.patches.empty());
    CHECK(assemble(glued.body.parts[part].model).mass ==
          relative(assemble(bare.body.parts[part].model).mass, 1e-4)); // edges of the blocks are mesh lines
  }
}
