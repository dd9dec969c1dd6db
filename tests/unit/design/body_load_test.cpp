// SPDX-License-Identifier: MPL-2.0
#include "relative.h"

#include <plate/core/error.h>
#include <plate/design/body_design.h>
#include <plate/design/body_document.h>
#include <plate/design/build_body.h>
#include <plate/design/load_design.h>

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <utility>

using namespace plate;

namespace
{

BodyDocument demo()
{
  return BodyDocument::from_file(std::string(EXAMPLES_DIR) + "/viola/body/laminate_body.toml");
}

} // namespace

TEST_CASE("what a body has to carry is read in SI, what is left out by its length")
{
  BodyDocument document = demo();
  const BodyLoadDesign usual = document.load();
  CHECK(usual.bridge_height == test::relative(0.037)); // of a viola: common practice, no source
  CHECK(usual.handling.thumb == test::relative(20.0));
  CHECK(usual.handling.squeeze == test::relative(50.0));
  CHECK(usual.handling.thumb_at.x() == test::relative(-0.3 * 0.405));
  CHECK(usual.knock_downs.sustained_wood == test::relative(0.6));
  document.set("bridge.height", "41.5");
  document.set("handling.squeeze", "12");
  document.set("handling.thumb_at", "[-100, 20]");
  document.set("knock_down.hot_wet", "0.9");
  const BodyLoadDesign given = document.load();
  CHECK(given.bridge_height == test::relative(0.0415));
  CHECK(given.handling.squeeze == test::relative(12.0));
  CHECK((given.handling.thumb_at - Eigen::Vector2d(-0.1, 0.02)).norm() < 1e-15);
  CHECK(given.knock_downs.hot_wet == test::relative(0.9));
}

TEST_CASE("each plate of a body brings the temperature of its own cure")
{
  BodyDocument document = demo();
  CHECK(document.design().top.cure_change == 0.0);
  document.set("top.layup.cure_temperature", "120");
  CHECK(document.design().top.cure_change == test::relative(-100.0)); // at 20 deg C
  CHECK(document.design().back.cure_change == 0.0);
}

TEST_CASE("strings pull at nodes of the blocks at both ends, each within half the block's width and a column more")
{
  const BodyModel model = build_body(demo().design());
  REQUIRE(model.end_blocks.has_value());
  const BodyPart& blocks = model.body.parts[model.end_blocks->part];
  CHECK(blocks.name == "blocks");
  CHECK(model.end_blocks->neck.size() + model.end_blocks->lower.size() == blocks.model.mesh.nodes.size());
  for (const auto& [nodes, end] : {std::pair{model.end_blocks->neck, 1.0}, {model.end_blocks->lower, -1.0}})
  {
    CHECK(nodes.size() > 10);
    for (const int node : nodes)
    {
      const Eigen::Vector3d& at = blocks.model.mesh.nodes[static_cast<std::size_t>(node)];
      CHECK(end * at.x() > 0.19);             // the ends lie at 202.5 mm, the ribs 3.1 mm within
      CHECK(std::abs(at.y()) < 0.026 + 0.02); // 52 mm wide
    }
  }
  BodyDocument bare = demo();
  bare.set("blocks.end", "[0, 0]");
  CHECK_FALSE(build_body(bare.design()).end_blocks.has_value());
}
