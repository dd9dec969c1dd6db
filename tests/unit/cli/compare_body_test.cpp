// SPDX-License-Identifier: MPL-2.0
#include "check_refused.h"
#include "quick_body.h"
#include "run_json.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

namespace
{

json only_design(std::vector<std::string> arguments)
{
  arguments.insert(arguments.begin(), "compare");
  const json result = run_json(arguments);
  REQUIRE(result.at("designs").size() == 1);
  return result.at("designs").at(0);
}

/// The pair that holds a mode of the reference by its name.
json pair_of(const json& design, const std::string& name)
{
  for (const json& pair : design.at("pairs"))
    if (pair.at("reference_name") == name)
      return pair;
  FAIL("no pair of " << name);
  return {};
}

/// All measures of write_box() larger by a factor, but for the densities: --set for compare.
std::vector<std::string> larger(double factor)
{
  std::vector<std::string> options;
  const auto set = [&](const std::string& key, double value) {
    options.insert(options.end(), {"--set", key + "=" + std::to_string(value)});
  };
  for (const std::string plate : {"top.", "back."})
  {
    set(plate + "outline.length", 350.0 * factor);
    set(plate + "outline.width", 200.0 * factor);
    set(plate + "thickness.value", 2.5 * factor);
  }
  set("top.setup.stop", 175.0 * factor);
  set("top.setup.bridge_feet", 30.0 * factor);
  set("top.soundhole.1.centre.2", 60.0 * factor);
  set("top.soundhole.1.length", 70.0 * factor);
  set("top.soundhole.1.width", 6.0 * factor);
  set("ribs.height", 40.0 * factor);
  set("ribs.thickness", 1.0 * factor);
  set("ribs.overhang", 2.5 * factor);
  set("bridge.mass", 3.0 * std::pow(factor, 3));
  set("mesh.size", 40.0 * factor);
  return options;
}

const std::string plain_box = "[linings]\nheight = 0\n[blocks]\nend = [0, 0]\ncorner = [0, 0]\n[bridge]\nmass = 3\n";

} // namespace

TEST_CASE("a body larger in all measures: the same shapes, lower by the factor, air and all")
{
  // Similar bodies of one material in one air: frequencies go with 1 / size, exactly, and mass with its cube.
  const Workshop shop;
  const std::string file = write_box(shop, plain_box);
  std::vector<std::string> arguments = {file, file, "--count", "8"};
  const std::vector<std::string> options = larger(1.25);
  arguments.insert(arguments.end(), options.begin(), options.end());
  const json design = only_design(arguments);
  CHECK(design.at("mass_difference_percent").get<double>() ==
        doctest::Approx(100.0 * (std::pow(1.25, 3) - 1.0)).epsilon(1e-6));
  CHECK(design.at("left_out_percent").get<double>() < 1e-6);
  REQUIRE(design.at("pairs").size() == 8);
  for (const json& pair : design.at("pairs"))
  {
    CHECK(pair.at("reference_mode") == pair.at("mode"));
    CHECK(pair.at("reference_name") == pair.at("name"));
    CHECK(pair.at("mac").get<double>() > 0.999);
    // What the mesh shows of the flow through the holes is blurred over 5 mm in both, which moves the air's mode.
    const double most = pair.at("name") == "A0" ? 2.0 : 1.0;
    CHECK(std::abs(pair.at("cents").get<double>() + 1200.0 * std::log2(1.25)) < most);
  }
}

TEST_CASE("the air's mode finds its own though the walls are others")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  const json result = run_json({"compare", file, file, "--count", "6", "--set", "top.thickness.value=5", "--set",
                                "back.layup.angle=90", "--set", "mesh.size=35"});
  CHECK(result.at("paired_by") == "shape");
  CHECK(result.at("reference_body").at("title") == "Box");
  const json& design = result.at("designs").at(0);
  const json a0 = pair_of(design, "A0");
  CHECK(a0.at("name") == "A0");
  CHECK(a0.at("mac").get<double>() > 0.5); // shapes of one body being orthogonal, no other can be liker
  // Stiffer walls yield less to the pressure: the air's mode rises.
  CHECK(a0.at("cents").get<double>() > 0.0);
  // One to one.
  std::set<int> partners;
  for (const json& pair : design.at("pairs"))
    CHECK(partners.insert(pair.at("mode").get<int>()).second);
  // sqrt(E / rho^3) of the spruce, whatever its thickness; the back is turned.
  for (const auto& [plate, along] : {std::pair{"top", 11e9}, {"back", 0.858e9}})
    CHECK(design.at("radiation_ratio_m4_kg_s").at(plate).at(0).get<double>() ==
          doctest::Approx(std::sqrt(along / std::pow(400.0, 3))).epsilon(1e-6));
}

TEST_CASE("modes measured on a body are paired by name, the others by frequency")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  const json modes = run_json({"body", file, "--count", "8"}).at("modes");
  const auto named = [&](const std::string& name)
  { return *std::find_if(modes.begin(), modes.end(), [&](const json& mode) { return mode.at("name") == name; }); };
  const json a0 = named("A0");
  // The third mode without a name, 0.1 % sharp; A0 a third off.
  const json& third = modes.at(2);
  REQUIRE(third.at("name") != "A0");
  const std::string list =
      shop.write("list.csv", "mode,name,frequency_hz,loss_percent\n1,A0," +
                                 std::to_string(1.2 * a0.at("frequency_hz").get<double>()) + ",2.5\n2,," +
                                 std::to_string(1.001 * third.at("frequency_hz").get<double>()) + ",\n");
  const json result = run_json({"compare", file, "--measured", list});
  CHECK(result.at("paired_by") == "name and frequency");
  const json& design = result.at("designs").at(0);
  REQUIRE(design.at("pairs").size() == 2);
  CHECK(design.at("pairs").at(0).at("mode") == a0.at("number"));
  CHECK(design.at("pairs").at(0).at("cents").get<double>() == doctest::Approx(-1200.0 * std::log2(1.2)).epsilon(1e-5));
  CHECK(design.at("pairs").at(0).at("reference_loss_percent") == 2.5);
  CHECK(design.at("pairs").at(1).at("mode") == third.at("number"));
  CHECK(design.at("pairs").at(1).at("mac").is_null());
  // Far above all that was computed there is no partner.
  const std::string far = shop.write("far.csv", "name,frequency_hz\nA0," +
                                                    std::to_string(a0.at("frequency_hz").get<double>()) + "\n,9000\n");
  CHECK(run_json({"compare", file, "--measured", far}).at("designs").at(0).at("unpaired_reference_modes") == json({2}));
}

TEST_CASE("compare of bodies writes pictures of both plates, the same bytes with any number of threads")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  for (const std::string threads : {"1", "2"})
    REQUIRE(
        run_plate({"compare", file, file, "--count", "3", "--threads", threads, "--out", shop.path(threads)}).status ==
        0);
  const std::set<std::string> files = shop.content("1");
  CHECK(files == std::set<std::string>{"compare.csv", "compare.json", "mac.png", "mac.svg", "polar_back.png",
                                       "polar_back.svg", "polar_top.png", "polar_top.svg", "side_by_side_back.png",
                                       "side_by_side_back.svg", "side_by_side_top.png", "side_by_side_top.svg"});
  for (const std::string& name : files)
  {
    CAPTURE(name);
    const bool same = bytes_of(shop.path("1/" + name)) == bytes_of(shop.path("2/" + name));
    CHECK(same);
  }
}

TEST_CASE("slips with bodies beside others are answered")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  const std::string top = shop.path("top.toml");
  const std::string allowed = "compare takes plates with plates or bodies with bodies";
  check_refused(run_plate({"compare", file, top}), "top.toml: is a plate, but " + file + " is a body; " + allowed);
  check_refused(run_plate({"compare", top, file}), "box.toml: is a body, but " + top + " is a plate; " + allowed);
  const std::string shapes = shop.write(
      "shapes.toml", "[[mode]]\nfrequency_hz = 200\npoints = [[0,0,1],[10,0,1],[0,10,1],[20,0,1],[0,20,1],[9,9,1]]\n");
  check_refused(run_plate({"compare", file, "--measured", shapes}),
                "Box is a body: leave points out, modes are then paired by name and frequency");
  const double a0 = run_json({"body", file, "--count", "1"}).at("modes").at(0).at("frequency_hz");
  const std::string radians =
      shop.write("radians.csv", "name,frequency_hz\nA0," + std::to_string(1.05 * 2.0 * std::numbers::pi * a0) + "\n");
  check_refused(run_plate({"compare", file, "--measured", radians}), "as if they were in rad/s");
}
