// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_text.h"

#include <plate/laminates/laminate.h>

#include <string>
#include <vector>

using namespace plate;
using namespace plate::test;

namespace
{

const std::string core = "[material.balsa]\nthickness = 2.0\n";

std::vector<double> angles(const Laminate& laminate)
{
  std::vector<double> out;
  for (const Ply& ply : laminate.plies)
    out.push_back(ply.angle.in_degrees());
  return out;
}

} // namespace

// Expected stacks and thicknesses: written out by hand from the layups.

TEST_CASE("a code with a ply becomes a stack from the inside out")
{
  const Design design =
      read(bare_plate + "[layup]\ncode = \"[0/60/-60]s\"\nply = { material = \"carbon_ud\", thickness = 0.125 }\n");
  const std::vector<double> expected = {0, 60, -60, -60, 60, 0};
  const std::vector<double> found = angles(design.laminate);
  REQUIRE(found.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i)
    CHECK(found[i] == doctest::Approx(expected[i]));
  CHECK(total_thickness(design.laminate) == test::relative(0.00075));
  CHECK(std::get<UniformThickness>(design.geometry.thickness).value == test::relative(0.00075));
  CHECK(design.laminate.plies[0].grain == Grain::laid);
}

TEST_CASE("a name in a code is a ply of that material with the thickness of its sheet")
{
  const Design design = read(bare_plate +
                             "[layup]\ncode = \"[0/~balsa]s\"\n"
                             "ply = { material = \"flax_ud\", thickness = 0.3 }\n" +
                             core);
  REQUIRE(design.laminate.plies.size() == 3);
  CHECK(design.laminate.plies[1].material.name == "balsa");
  CHECK(design.laminate.plies[1].thickness == test::relative(0.002));
  CHECK(design.laminate.plies[2].material.name == "flax_ud");
}

TEST_CASE("scale changes all plies but cores, scale_core the cores alone")
{
  const std::string layup = "[layup]\ncode = \"[0/~balsa]s\"\nply = { material = \"flax_ud\", thickness = 0.3 }\n";
  const Design skins = read(bare_plate + layup + "scale = 2\n" + core);
  CHECK(skins.laminate.plies[0].thickness == test::relative(0.0006));
  CHECK(skins.laminate.plies[1].thickness == test::relative(0.002));
  const Design middle = read(bare_plate + layup + "scale_core = 0.5\n" + core);
  CHECK(middle.laminate.plies[0].thickness == test::relative(0.0003));
  CHECK(middle.laminate.plies[1].thickness == test::relative(0.001));
  const Design solid = read(small_plate + "scale = 1.2\n");
  CHECK(std::get<UniformThickness>(solid.geometry.thickness).value == test::relative(0.003));
  CHECK(solid.laminate.plies[0].thickness == test::relative(0.003));
}

TEST_CASE("listed plies keep their order, angles and grain")
{
  const Design design = read(bare_plate + "[layup]\nplies = [\n"
                                          "  { material = \"carbon_ud\", thickness = 0.2, angle = 45 },\n"
                                          "  { material = \"spruce\", thickness = 1.8, grain = \"carved\" },\n"
                                          "  { material = \"carbon_ud\", thickness = 0.1, angle = -45 },\n]\n");
  REQUIRE(design.laminate.plies.size() == 3);
  CHECK(design.laminate.plies[0].angle.in_degrees() == doctest::Approx(45.0));
  CHECK(design.laminate.plies[1].grain == Grain::carved);
  CHECK(design.laminate.plies[2].grain == Grain::laid);
  CHECK(design.laminate.plies[2].thickness == test::relative(0.0001));
}

TEST_CASE("layups that contradict themselves are refused")
{
  check_message(error_of(bare_plate), "top.toml: layup:", {"missing"});
  check_message(error_of(bare_plate + "[layup]\nscale = 1\n"), "top.toml:5: layup:", {"solid, code, plies"});
  check_message(error_of(small_plate + "code = \"[0]\"\n"), "top.toml:9: layup.code", {"contradicts layup.solid"});
  check_message(
      error_of(bare_plate + "[thickness]\nvalue = 2\n[layup]\nplies = [{ material = \"flax_ud\", thickness = 1 }]\n"),
      "top.toml:5: thickness:", {"contradicts layup.plies"});
  check_message(error_of(bare_plate + "[layup]\nsolid = \"spruce\"\n"), "top.toml: thickness:", {"missing"});
  check_message(error_of(bare_plate + "[layup]\ncode = \"[0]\"\n"), "top.toml:5: layup.ply:", {"missing"});
  check_message(error_of(bare_plate + "[layup]\nplies = []\n"), "top.toml:6: layup.plies", {"empty"});
  check_message(error_of(bare_plate + "[layup]\nplies = [{ material = \"flax_ud\", thickness = 1 }]\nangle = 3\n"),
                "top.toml:7: layup.angle = 3:", {"solid"});
  check_message(error_of(small_plate + "ply = { material = \"flax_ud\" }\n"), "top.toml:9: layup.ply:", {"code"});
}

TEST_CASE("a code that does not parse is reported with key, code and column")
{
  const std::string ply = "ply = { material = \"carbon_ud\", thickness = 0.125 }\n";
  check_message(error_of(bare_plate + "[layup]\ncode = \"[0/60/x9!]s\"\n" + ply),
                "top.toml:6: layup.code = \"[0/60/x9!]s\":", {"column 9", "\"!\""});
  check_message(error_of(bare_plate + "[layup]\ncode = \"[0/foam]s\"\n" + ply), "top.toml:6: layup.code",
                {"\"foam\"", "nearest"});
  check_message(error_of(bare_plate + "[layup]\ncode = \"[0/balsa]s\"\n" + ply), "top.toml:6: layup.code",
                {"material.balsa.thickness"});
}
