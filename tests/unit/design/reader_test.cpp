// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_text.h"

#include <plate/materials/library.h>

#include <cmath>
#include <numbers>
#include <utility>
#include <variant>

using namespace plate;
using namespace plate::test;

namespace
{

constexpr double degree = std::numbers::pi / 180.0;

const std::string bouts_top = "[outline]\nkind = \"bouts\"\nlength = 405\nlower_bout = 236\ncentre_bout = 131\n"
                              "upper_bout = 193\n[arching]\nkind = \"cycloid\"\nheight = 12.5\n"
                              "[thickness]\nvalue = 2.8\n[layup]\nsolid = \"spruce\"\n";

} // namespace

// Expected values: the text of the designs, converted by hand to SI.

TEST_CASE("a small design is read into SI with defaults for the rest")
{
  const Design design = read(small_plate);
  CHECK(design.title == "top");
  const auto& outline = std::get<RectangleOutline>(design.geometry.outline);
  CHECK(outline.length == doctest::Approx(0.350));
  CHECK(outline.width == test::relative(0.200));
  CHECK(std::holds_alternative<FlatArching>(design.geometry.arching));
  CHECK(std::get<UniformThickness>(design.geometry.thickness).value == test::relative(0.0025));
  REQUIRE(design.laminate.plies.size() == 1);
  CHECK(design.laminate.plies[0].thickness == test::relative(0.0025));
  CHECK(design.laminate.plies[0].material.name == "spruce");
  CHECK(design.laminate.plies[0].grain == Grain::carved);
  CHECK(design.supports.empty());
  CHECK_FALSE(design.bar.has_value());
  CHECK(design.setup.bridge_x == doctest::Approx(0.0));
}

TEST_CASE("arching, thickness, grain and mesh size are read")
{
  const Design design = read("title = \"Plate É\"\n" + bare_plate +
                             "[arching]\nkind = \"elliptic\"\nheight = 15\n"
                             "[thickness]\nkind = \"graduated\"\ncentre = 3.1\nbouts = 2.6\nchannel = 2.4\nedge = 4\n"
                             "[layup]\nsolid = \"maple\"\ngrain = \"follows\"\nangle = -30\nscale = 2\n"
                             "[mesh]\nsize = 12\n");
  CHECK(design.title == "Plate É");
  CHECK(std::get<EllipticArching>(design.geometry.arching).height == test::relative(0.015));
  const auto& thickness = std::get<GraduatedThickness>(design.geometry.thickness);
  CHECK(thickness.centre == test::relative(0.0062));
  CHECK(thickness.bouts == test::relative(0.0052));
  CHECK(thickness.channel == test::relative(0.0048));
  CHECK(thickness.edge == test::relative(0.008));
  CHECK(design.laminate.plies[0].grain == Grain::laid);
  CHECK(design.laminate.plies[0].angle.in_radians() == doctest::Approx(-30 * degree));
  CHECK(design.mesh.size == test::relative(0.012));
}

TEST_CASE("soundholes are read with their own keys and with defaults")
{
  const Design design = read(bouts_top + "[[soundhole]]\nkind = \"f\"\nlength = 80\nwhere = [-20, 62]\nupper_eye = 7\n"
                                         "lower_eye = 9\nstem = 6\ntilt = 32\n"
                                         "[[soundhole]]\nkind = \"slot\"\ncentre = [130, 30]\nlength = 40\nwidth = 6\n"
                                         "angle = -12\nmirror = false\n");
  REQUIRE(design.geometry.soundholes.size() == 2);
  const auto& f = std::get<FHole>(design.geometry.soundholes[0]);
  CHECK(*f.length == test::relative(0.080));
  CHECK(f.where->x() == test::relative(-0.020));
  CHECK(f.where->y() == test::relative(0.062));
  CHECK(*f.upper_eye == test::relative(0.007));
  CHECK(*f.lower_eye == test::relative(0.009));
  CHECK(*f.stem == test::relative(0.006));
  CHECK(f.tilt->in_radians() == doctest::Approx(32 * degree));
  CHECK(f.mirror);
  const auto& slot = std::get<Slot>(design.geometry.soundholes[1]);
  CHECK(slot.centre.x() == test::relative(0.130));
  CHECK(slot.angle.in_radians() == test::relative(-12 * degree));
  CHECK_FALSE(slot.mirror);
}

TEST_CASE("the nicks of an f-hole without a place stand at the bridge line")
{
  const Design design = read(bouts_top + "[setup]\nstop = 225\n[[soundhole]]\nkind = \"f\"\nlength = 78\n");
  CHECK(design.setup.bridge_x == test::relative(0.2025 - 0.225));
  CHECK(std::get<FHole>(design.geometry.soundholes[0]).where->x() == test::relative(-0.0225));
}

TEST_CASE("the bar is highest where its axis meets the bridge line")
{
  const std::string bar = "[setup]\nstop = 222\n[bar]\nmaterial = \"spruce\"\nlength = 310\nwidth = 6\nheight = 14\n"
                          "end_height = 3\noffset = 19\ncentre = 5\nangle = 2\n";
  const double apex = (-0.0195 - 0.005) / std::cos(2 * degree);
  SUBCASE("straight")
  {
    const Design design = read(bouts_top + bar);
    REQUIRE(design.bar.has_value());
    CHECK(design.geometry.bar->apex == test::relative(apex));
    CHECK(design.bar->axis.x() == doctest::Approx(std::cos(2 * degree)));
    CHECK(design.bar->axis.y() == test::relative(std::sin(2 * degree)));
    CHECK(design.bar->profile.at(apex) == test::relative(0.014));
    CHECK(design.bar->profile.at(-0.155) == test::relative(0.003));
    CHECK(design.bar->profile.at(0.155) == test::relative(0.003));
    CHECK(design.bar->profile.at((apex + 0.155) / 2) == test::relative(0.0085));
  }
  SUBCASE("rounded: the same apex and ends, lower in between, no kink at the apex")
  {
    const Design design = read(bouts_top + bar + "profile = \"rounded\"\n");
    const BarProfile& profile = design.bar->profile;
    CHECK(profile.at(apex) == test::relative(0.014));
    CHECK(profile.at(-0.155) == test::relative(0.003));
    CHECK(profile.at(0.155) == test::relative(0.003));
    const double step = (apex + 0.155) / 16;
    CHECK(profile.at(apex - step) > 0.014 - 0.3 * 0.011 / 16); // a straight side falls by 1/16 of 11 mm
    for (std::size_t i = 1; i < profile.station.size(); ++i)
      CHECK(profile.station[i] > profile.station[i - 1]);
  }
}

TEST_CASE("supports name the edge groups of the mesh")
{
  const Design all = read(small_plate + "[support]\nedge = \"hinged\"\n");
  REQUIRE(all.supports.size() == 4);
  CHECK(all.supports[3].group == "y+");
  CHECK(all.supports[3].support == EdgeSupport::hinged);
  const Design three = read(small_plate + "[support]\nedges = [\"rest\", \"hinged\", \"clamped\", \"free\"]\n");
  REQUIRE(three.supports.size() == 3);
  const std::pair<const char*, EdgeSupport> expected[] = {
      {"x-", EdgeSupport::rest}, {"x+", EdgeSupport::hinged}, {"y-", EdgeSupport::clamped}};
  for (std::size_t i = 0; i < 3; ++i)
  {
    CHECK(three.supports[i].group == expected[i].first);
    CHECK(three.supports[i].support == expected[i].second);
  }
  const Design round = read(bouts_top + "[support]\nedge = \"rest\"\n");
  REQUIRE(round.supports.size() == 1);
  CHECK(round.supports[0].group == "outline");
  CHECK(round.supports[0].support == EdgeSupport::rest);
}

TEST_CASE("a material of one's own and a changed built-in one")
{
  const std::string own = "[material.ash]\nE1 = 15\nE2 = 1.5\nE3 = 0.8\nG12 = 0.9\nG13 = 0.8\nG23 = 0.3\nnu12 = 0.4\n"
                          "nu13 = 0.5\nnu23 = 0.6\ndensity = 650\nloss = [1, 2, 3, 4, 5, 6]\n";
  Design design = read(bare_plate + "[thickness]\nvalue = 2\n[layup]\nsolid = \"ash\"\n" + own);
  const Material& ash = design.laminate.plies[0].material;
  CHECK(ash.elastic.E1 == doctest::Approx(15e9));
  CHECK(ash.elastic.E3 == doctest::Approx(0.8e9));
  CHECK(ash.elastic.G23 == doctest::Approx(0.3e9));
  CHECK(ash.elastic.nu23 == doctest::Approx(0.6));
  CHECK(ash.density == doctest::Approx(650.0));
  CHECK(ash.loss.E1 == test::relative(0.01));
  CHECK(ash.loss.G23 == test::relative(0.06));
  CHECK_FALSE(ash.core);

  design = read(small_plate + "[material.spruce]\nE1 = 13\n");
  const Material& spruce = design.laminate.plies[0].material;
  CHECK(spruce.elastic.E1 == doctest::Approx(13e9));
  CHECK(spruce.elastic.E2 == find_material("spruce")->elastic.E2);
}

TEST_CASE("constants through a fibre ply follow from those in its plane")
{
  const Design design = read(bare_plate + "[layup]\nplies = [{ material = \"tape\", thickness = 0.2 }]\n"
                                          "[material.tape]\nE1 = 120\nE2 = 8\nG12 = 4\nnu12 = 0.3\ndensity = 1500\n");
  const OrthotropicElastic& e = design.laminate.plies[0].material.elastic;
  CHECK(e.E3 == doctest::Approx(8e9));
  CHECK(e.G13 == doctest::Approx(4e9));
  CHECK(e.nu13 == doctest::Approx(0.3));
  // Isotropy across the fibre: G = E / (2 (1 + nu)).
  CHECK(e.G23 == doctest::Approx(8e9 / (2 * (1 + e.nu23))));
}

TEST_CASE("the demo designs can be read")
{
  for (const char* name : {"spruce_top", "laminate_top"})
  {
    const Design design = DesignDocument::from_file(std::string(EXAMPLES_DIR "/viola/") + name + ".toml").design();
    CHECK(outline_length(design.geometry.outline) == doctest::Approx(0.405));
    CHECK(design.geometry.soundholes.size() == 1);
    CHECK(design.bar.has_value());
  }
}
