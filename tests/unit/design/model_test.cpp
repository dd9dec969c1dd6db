// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_text.h"

#include <plate/assembly/assemble.h>
#include <plate/design/build_model.h>
#include <plate/design/design_model.h>

#include <array>
#include <numbers>

using namespace plate;
using namespace plate::test;

TEST_CASE("the mass of a design's model is volume times density")
{
  // 350 x 200 x 2.5 mm flat; the ellipse has pi/4 of its box.
  const std::string coarse = "[mesh]\nsize = 25\n";
  const std::string light = "[material.spruce]\ndensity = 400\n";
  CHECK(assemble(build_model(read(small_plate + light + coarse))).mass == doctest::Approx(0.070).epsilon(1e-9));
  DesignDocument ellipse = DesignDocument::from_text(small_plate + light + coarse, "top.toml");
  ellipse.set("outline.kind", "ellipse");
  CHECK(assemble(build_model(ellipse.design())).mass == test::relative(0.070 * std::numbers::pi / 4, 1e-6));
}

TEST_CASE("a bar adds its mass and its model")
{
  const Design design = read(small_plate + "[mesh]\nsize = 25\n[material.spruce]\ndensity = 400\n"
                                           "[bar]\nmaterial = \"spruce\"\nlength = 250\nwidth = 6\nheight = 12\n"
                                           "end_height = 3\noffset = 20\n");
  const Model model = build_model(design);
  REQUIRE(model.bars.size() == 1);
  // Two trapezia, (3 + 12)/2 mm high over 250 mm, 6 mm wide.
  CHECK(assemble(model).mass == test::relative(0.070 + 0.25 * 0.006 * 0.0075 * 400, 1e-6));
}

TEST_CASE("a design as a model of its keys moves one mesh")
{
  DesignModel design(DesignDocument::from_text(small_plate + "[mesh]\nsize = 25\n", "top.toml"),
                     {"outline.length", "thickness.value"});
  const Model first = design.build(std::array{350.0, 2.5});
  const Model moved = design.build(std::array{360.0, 3.0});
  const Model again = design.build(std::array{350.0, 2.5});
  CHECK(design.num_remeshed() == 0);
  CHECK(moved.mesh.triangles == first.mesh.triangles);
  const double density = first.material.laminate.plies[0].material.density;
  CHECK(assemble(moved).mass == doctest::Approx(0.360 * 0.200 * 0.003 * density).epsilon(1e-9));
  double drift = 0.0;
  for (std::size_t i = 0; i < first.mesh.nodes.size(); ++i)
    drift = std::max(drift, (first.mesh.nodes[i] - again.mesh.nodes[i]).norm());
  CHECK(drift < 1e-4); // m; moved to its own geometry a mesh may relax, but not wander
}

TEST_CASE("a design as a model refuses what is no number and no design")
{
  const DesignDocument document = DesignDocument::from_text(small_plate, "top.toml");
  CHECK_THROWS_AS(DesignModel(document, {"outline.kind"}), DesignError);
  DesignModel design(document, {"thickness.value"});
  CHECK_THROWS_AS(static_cast<void>(design.build(std::array{-1.0})), DesignError);
  CHECK_THROWS_AS(static_cast<void>(design.build(std::array{1.0, 2.0})), InvalidInput);
}
