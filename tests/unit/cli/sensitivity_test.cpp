// SPDX-License-Identifier: MPL-2.0
#include "run_json.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <cstddef>
#include <set>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

namespace
{

json sensitivity(std::vector<std::string> arguments)
{
  arguments.insert(arguments.begin(), "sensitivity");
  return run_json(arguments);
}

double slope(const json& mode, const std::string& key)
{
  return mode.at("derivatives").at(key).at("hz_per_unit").get<double>();
}

std::set<std::string> keys_of(const json& result)
{
  std::set<std::string> keys;
  for (const json& key : result.at("keys"))
    keys.insert(key.at("key").get<std::string>());
  return keys;
}

const json& entry_of(const json& result, const std::string& wanted)
{
  for (const json& key : result.at("keys"))
    if (key.at("key") == wanted)
      return key;
  FAIL("no such key: " << wanted);
  return result;
}

} // namespace

TEST_CASE("sensitivity by the keys of a file: laws of a thin flat plate")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  const json result = sensitivity({design, "--count", "4"});
  CHECK(result.at("complete") == true);
  CHECK(result.at("mass_g").get<double>() == doctest::Approx(70.0).epsilon(1e-6)); // 350 x 200 x 2.5 mm, 400 kg/m3
  // mesh.size is no measure of the plate.
  CHECK(keys_of(result) == std::set<std::string>{"outline.length", "outline.width", "thickness.value",
                                                 "material.spruce.E1", "material.spruce.E2", "material.spruce.E3",
                                                 "material.spruce.G12", "material.spruce.G13", "material.spruce.G23",
                                                 "material.spruce.nu12", "material.spruce.nu13", "material.spruce.nu23",
                                                 "material.spruce.density"});
  REQUIRE(result.at("modes").size() == 4);
  for (const json& mode : result.at("modes"))
  {
    const double f = mode.at("frequency_hz").get<double>();
    // Kirchhoff: f in proportion to thickness, shear and rotary inertia take off a little (here at most 2 %).
    const double by_thickness = 2.5 * slope(mode, "thickness.value") / f;
    CHECK(by_thickness < 1.0);
    CHECK(by_thickness > 0.98);
    CHECK(400.0 * slope(mode, "material.spruce.density") == doctest::Approx(-0.5 * f).epsilon(1e-5));
    // All moduli together: half; a body larger in all directions sounds lower in proportion.
    const double by_moduli = 11.0 * slope(mode, "material.spruce.E1") + 0.858 * slope(mode, "material.spruce.E2") +
                             0.473 * slope(mode, "material.spruce.E3") + 0.704 * slope(mode, "material.spruce.G12") +
                             0.671 * slope(mode, "material.spruce.G13") + 0.033 * slope(mode, "material.spruce.G23");
    CHECK(by_moduli == doctest::Approx(0.5 * f).epsilon(1e-5));
    const double by_size = 350.0 * slope(mode, "outline.length") + 200.0 * slope(mode, "outline.width") +
                           2.5 * slope(mode, "thickness.value");
    // Strips along the edges are as wide as the thickness asks for and move with the outline only: the mesh's error.
    CHECK(by_size == doctest::Approx(-f).epsilon(1e-3));
    CHECK(mode.at("derivatives").at("thickness.value").at("unit") == "mm");
  }
  const json& thickness = entry_of(result, "thickness.value");
  CHECK(thickness.at("mass_g_per_unit").get<double>() == doctest::Approx(28.0).epsilon(1e-6));
  CHECK(thickness.at("change") == 0.1);
  CHECK(entry_of(result, "material.spruce.E1").at("change") == 0.11);
  // The greatest effect first.
  double last = 1e300;
  for (const json& key : result.at("keys"))
  {
    CHECK(key.at("greatest_cents_per_change").get<double>() <= last);
    last = key.at("greatest_cents_per_change").get<double>();
  }
}

TEST_CASE("sensitivity by chosen keys, those without effect too, is the same on two threads")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  const std::vector<std::string> arguments = {"sensitivity", design,
                                              "--key",       "layup.angle",
                                              "--key",       "material.spruce.loss.1",
                                              "--set",       "material.spruce.loss=[1,2,2,2,2,2]",
                                              "--count",     "3",
                                              "--json"};
  const Run run = run_plate(arguments);
  CHECK(run.status == 0);
  const json result = json::parse(run.out);
  CHECK(keys_of(result) == std::set<std::string>{"layup.angle", "material.spruce.loss.1"});
  CHECK(entry_of(result, "material.spruce.loss.1").at("acts") == false);
  for (const json& mode : result.at("modes"))
  {
    CHECK(slope(mode, "material.spruce.loss.1") == 0.0);
    // Grain along the plate is an even function of its angle there. 1e-4 of what 45 degrees might change.
    CHECK(std::abs(slope(mode, "layup.angle")) < 1e-4 * mode.at("frequency_hz").get<double>());
  }
  std::vector<std::string> threads = arguments;
  threads.insert(threads.end(), {"--threads", "2"});
  CHECK(run_plate(threads).out == run.out);
}

TEST_CASE("sensitivity writes its files, maps of the modes asked for, and the same on a rerun")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  const std::vector<std::string> arguments = {"sensitivity", design,  "--key",  "thickness.value", "--count",
                                              "4",           "--map", "M2",     "--map",           "4",
                                              "--leave",     "M1",    "--json", "--out",           shop.path("out")};
  const Run run = run_plate(arguments);
  CHECK(run.status == 0);
  const std::set<std::string> content = shop.content("out");
  CHECK(content.size() == 7);
  for (const char* name : {"sensitivity.csv", "sensitivity.json", "sensitivity.vtu", "thickness_slopes_02.png",
                           "thickness_slopes_02.svg", "thickness_slopes_04.png", "thickness_slopes_04.svg"})
    CHECK(content.count(name) == 1);
  CHECK(bytes_of(shop.path("out/sensitivity.json")) == run.out);
  CHECK(bytes_of(shop.path("out/thickness_slopes_02.svg")).find("thickness here leaves M1 twist alone") !=
        std::string::npos);
  CHECK(
      bytes_of(shop.path("out/sensitivity.csv")).starts_with("key,value,unit,change,mass_g_per_unit,M1 hz_per_unit,"));
  const std::string picture = bytes_of(shop.path("out/thickness_slopes_04.png"));
  CHECK(run_plate(arguments).out == run.out);
  CHECK(bytes_of(shop.path("out/thickness_slopes_04.png")) == picture);
}

TEST_CASE("a sensitivity table says what was changed, what is left out and what modes are near")
{
  const Workshop shop;
  const std::string design =
      shop.write("patched.toml", quick_design() + "[[patch]]\nshape = \"ellipse\"\ncentre = [0, 0]\naxes = [80, 50]\n"
                                                  "plies = [{ material = \"carbon_ud\", thickness = 0.1 }]\n");
  const Run run = run_plate({"sensitivity", design, "--count", "3"});
  CHECK(run.status == 0);
  for (const char* words :
       {"1 degree, 0.1 mm", "(frequency, Hz)", "patch.1.plies.1.thickness",
        "left out, since edges of patches move through the mesh in jumps (see plate sweep): patch.1.centre.1",
        "A prediction does not replace a test piece.\n"})
  {
    CAPTURE(words);
    CHECK(run.out.find(words) != std::string::npos);
  }
  // A square isotropic plate has a pair of modes, which the mesh parts by little.
  const std::string square = shop.write(
      "square.toml", "[outline]\nkind = \"rectangle\"\nlength = 200\nwidth = 200\n[thickness]\nvalue = 2\n"
                     "[layup]\nsolid = \"plastic\"\ngrain = \"follows\"\n[mesh]\nsize = 25\n[material.plastic]\n"
                     "E1 = 3\nE2 = 3\nE3 = 3\nG12 = 1.2\nG13 = 1.2\nG23 = 1.2\nnu12 = 0.25\nnu13 = 0.25\nnu23 = 0.25\n"
                     "density = 1200\n");
  const Run pair = run_plate({"sensitivity", square, "--count", "6", "--key", "outline.length"});
  CHECK(pair.status == 0);
  CHECK(pair.out.find("  modes 4 and 5 ") != std::string::npos);
}

TEST_CASE("sensitivity of wood to the humidity of its air")
{
  const Workshop shop;
  const std::string design =
      shop.write("spruce.toml", "[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n[thickness]\nvalue = 2.5\n"
                                "[layup]\nsolid = \"spruce\"\n[mesh]\nsize = 30\n[surroundings]\nhumidity = 50\n");
  const json result = sensitivity({design, "--count", "2", "--key", "surroundings.humidity"});
  for (const json& mode : result.at("modes"))
  {
    // From 40 to 60 % wood takes up 3 to 4 % of water [WoodHandbook2021] table 4-2; a spruce's modulus falls by about 2
    // % for each of them, its mass grows by 1 %: the frequency falls by 1.5 %, 0.2 to 0.3 % for 1 % of humidity.
    const double part = slope(mode, "surroundings.humidity") / mode.at("frequency_hz").get<double>();
    CHECK(part < -0.001);
    CHECK(part > -0.004);
  }
  CHECK(entry_of(result, "surroundings.humidity").at("mass_g_per_unit").get<double>() > 0.0);
}
