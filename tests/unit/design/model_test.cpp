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

TEST_CASE("a design whose keys leave the mesh alone is brought to a point without a new mesh")
{
  const std::string plate = "[layup]\nplies = [{ material = \"carbon_ud\", thickness = 0.5, angle = 0 }]\n"
                            "[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n[arching]\nkind = \"flat\"\n"
                            "[mesh]\nsize = 25\n[[mass]]\nat = [10, 20]\ngrams = 3\n";
  DesignModel design(DesignDocument::from_text(plate, "top.toml"),
                     {"layup.plies.1.thickness", "layup.plies.1.angle", "material.carbon_ud.density", "mass.1.grams"});
  CHECK(design.keeps_mesh());
  Model model = design.build(std::array{0.5, 0.0, 1500.0, 3.0});
  const std::vector<Eigen::Vector3d> nodes = model.mesh.nodes;
  design.rebuild(std::array{0.8, 30.0, 1600.0, 7.0}, model);
  CHECK(model.mesh.nodes == nodes);
  CHECK(model.mesh.thickness.back() == relative(0.8e-3));
  CHECK(model.material.laminate.plies[0].angle.in_radians() == doctest::Approx(std::numbers::pi / 6));
  CHECK(assemble(model).mass == relative(0.350 * 0.200 * 0.8e-3 * 1600.0 + 7e-3));
  CHECK_THROWS_AS(design.rebuild(std::array{-0.5, 0.0, 1500.0, 3.0}, model), DesignError);
}

TEST_CASE("a design whose keys move nodes is built anew")
{
  DesignModel design(DesignDocument::from_text(small_plate + "[mesh]\nsize = 25\n", "top.toml"),
                     {"outline.length", "thickness.value"});
  CHECK_FALSE(design.keeps_mesh());
  Model model = design.build(std::array{350.0, 2.5});
  design.rebuild(std::array{360.0, 2.5}, model);
  double least = 0.0;
  for (const Eigen::Vector3d& node : model.mesh.nodes)
    least = std::min(least, node.x());
  CHECK(least == relative(-0.180));
}

TEST_CASE("keys of the shape move nodes, those of materials, plies, masses and the bar's height do not")
{
  const std::string barred = small_plate + "[mesh]\nsize = 25\n[bar]\nmaterial = \"spruce\"\nlength = 250\nwidth = 6\n"
                                           "height = 12\noffset = 20\n[[patch]]\nshape = \"ellipse\"\naxes = [60, 40]\n"
                                           "plies = [{ material = \"carbon_ud\", thickness = 0.1, angle = 0 }]\n"
                                           "[[mass]]\nat = [50, 30]\ngrams = 5\n";
  const DesignDocument document = DesignDocument::from_text(barred, "top.toml");
  for (const char* key : {"thickness.value", "layup.scale", "layup.angle", "material.spruce.E1", "bar.height",
                          "bar.end_height", "patch.1.plies.1.thickness", "mass.1.grams", "surroundings.temperature"})
  {
    CAPTURE(key);
    CHECK(DesignModel(document, {key}).keeps_mesh());
  }
  for (const char* key :
       {"outline.length", "bar.width", "bar.offset", "patch.1.axes.1", "mass.1.at.1", "arching.height", "mesh.size"})
  {
    CAPTURE(key);
    CHECK_FALSE(DesignModel(document, {"layup.scale", key}).keeps_mesh());
  }
}

TEST_CASE("among keys of shape and of material, a change of the material leaves the first mesh where it is")
{
  DesignModel design(DesignDocument::from_text(small_plate + "[mesh]\nsize = 25\n", "top.toml"),
                     {"outline.length", "thickness.value"});
  const Model first = design.build(std::array{350.0, 2.5});
  Model model = design.build(std::array{360.0, 2.5});
  design.rebuild(std::array{350.0, 3.0}, model);
  CHECK(model.mesh.nodes == first.mesh.nodes); // strips along the edges too
  CHECK(model.mesh.thickness.front() == relative(3e-3));
  const double density = first.material.laminate.plies[0].material.density;
  CHECK(assemble(model).mass == relative(0.350 * 0.200 * 3e-3 * density));
}
