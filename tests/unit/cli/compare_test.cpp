// SPDX-License-Identifier: MPL-2.0
#include "run_json.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <numbers>
#include <set>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

namespace
{

/// Runs compare with --json and returns what it prints.
json compare(std::vector<std::string> arguments)
{
  arguments.insert(arguments.begin(), "compare");
  return run_json(arguments);
}

json only_design(const json& result)
{
  REQUIRE(result.at("designs").size() == 1);
  return result.at("designs").at(0);
}

} // namespace

TEST_CASE("a plate twice as thick: an octave higher, twice the mass, the same shapes")
{
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  const json result = compare({file, file, "--count", "4", "--set", "thickness.value=5"});
  CHECK(result.at("reference") == "Flat spruce");
  CHECK(result.at("paired_by") == "shape");
  CHECK(result.at("reference_plate").at("mass_g").get<double>() == doctest::Approx(70.0).epsilon(1e-6)); // --set is not
  const json design = only_design(result);                                                               // about it
  CHECK(design.at("mass_g").get<double>() == doctest::Approx(140.0).epsilon(1e-6)); // 350 x 200 x 5 mm, 400 kg/m3
  CHECK(design.at("mass_difference_percent").get<double>() == doctest::Approx(100.0).epsilon(1e-6));
  // sqrt(E / rho^3) of a homogeneous plate, whatever its thickness
  for (const json& plate : {result.at("reference_plate"), design})
  {
    CHECK(plate.at("radiation_ratio_m4_kg_s").at(0).get<double>() ==
          doctest::Approx(std::sqrt(11e9 / std::pow(400.0, 3))).epsilon(1e-6));
    CHECK(plate.at("radiation_ratio_m4_kg_s").at(1).get<double>() ==
          doctest::Approx(std::sqrt(0.858e9 / std::pow(400.0, 3))).epsilon(1e-6));
  }
  REQUIRE(design.at("pairs").size() == 4);
  for (const json& pair : design.at("pairs"))
  {
    CHECK(pair.at("reference_mode") == pair.at("mode"));
    CHECK(pair.at("mac").get<double>() > 0.99);
    // Kirchhoff: in proportion to the thickness; shear and rotary inertia take under 4 % (see the tests of beside).
    CHECK(pair.at("difference_percent").get<double>() > 92.0);
    CHECK(pair.at("difference_percent").get<double>() < 100.0);
    const double ratio = pair.at("frequency_hz").get<double>() / pair.at("reference_hz").get<double>();
    CHECK(pair.at("cents").get<double>() == doctest::Approx(1200.0 * std::log2(ratio)).epsilon(1e-6));
    CHECK(pair.at("loss_percent").is_number());
  }
}

TEST_CASE("a plate larger in all measures: the same shapes, lower by the factor")
{
  // Similar bodies of one material: frequencies go with 1 / size, exactly.
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  const json design =
      only_design(compare({file, file, "--count", "6", "--set", "outline.length=420", "--set", "outline.width=240",
                           "--set", "thickness.value=3", "--set", "mesh.size=20"}));
  REQUIRE(design.at("pairs").size() == 6);
  CHECK(design.at("left_out_percent").get<double>() < 1e-6);
  for (const json& pair : design.at("pairs"))
  {
    CHECK(pair.at("reference_mode") == pair.at("mode"));
    CHECK(pair.at("mac").get<double>() > 0.999);
    CHECK(std::abs(pair.at("cents").get<double>() - 1200.0 * std::log2(1.0 / 1.2)) < 1.0); // two meshes differ
  }
}

TEST_CASE("modes that change places are found by their shape")
{
  // Stiff along and across exchanged on an oblong: the plate bends where it is long before it twists.
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  const json design = only_design(compare({file, file, "--set", "layup.angle=90"}));
  const json twist = design.at("pairs").at(0);
  CHECK(twist.at("reference_name") == "M1");
  CHECK(twist.at("name") == "M1");
  CHECK(twist.at("mode") == 2);
  CHECK(twist.at("mac").get<double>() > 0.9);
}

TEST_CASE("what a hole takes away is left out and said")
{
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  const std::string pierced = shop.write(
      "pierced.toml", quick_design() + "[[soundhole]]\nkind = \"slot\"\ncentre = [0, 50]\nlength = 120\nwidth = 20\n");
  const json design = only_design(compare({file, pierced, "--count", "3"}));
  const double area = 2.0 * (100.0 * 20.0 + std::numbers::pi * 100.0) / (350.0 * 200.0); // both slots, round ends
  CHECK(design.at("left_out_percent").get<double>() > 100.0 * area * 0.8); // counted at points of the mesh
  CHECK(design.at("left_out_percent").get<double>() < 100.0 * area * 1.2);
  CHECK(only_design(compare({pierced, file, "--count", "3"})).at("left_out_percent").get<double>() == 0.0);
  CHECK(run_plate({"compare", file, pierced, "--count", "3"}).out.find(" % of the reference's mass has no place") !=
        std::string::npos);
}

TEST_CASE("several designs: a table and pictures for each, the same bytes on each run")
{
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  for (const std::string folder : {"one", "two"})
  {
    const Run run = run_plate({"compare", file, file, file, "--count", "3", "--json", "--out", shop.path(folder)});
    CHECK(run.status == 0);
    CHECK(run.err.empty());
    CHECK(bytes_of(shop.path(folder + "/compare.json")) == run.out);
  }
  const std::set<std::string> files = shop.content("one");
  CHECK(files == std::set<std::string>{"compare.csv", "compare.json", "mac_1.png", "mac_1.svg", "mac_2.png",
                                       "mac_2.svg", "polar_1.png", "polar_1.svg", "polar_2.png", "polar_2.svg",
                                       "side_by_side_1.png", "side_by_side_1.svg", "side_by_side_2.png",
                                       "side_by_side_2.svg"});
  for (const std::string& name : files)
  {
    CAPTURE(name);
    const bool same = bytes_of(shop.path("one/" + name)) == bytes_of(shop.path("two/" + name));
    CHECK(same);
  }
}

TEST_CASE("compare prints masses, differences and likeness and ends with the caution")
{
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  const Run run =
      run_plate({"compare", file, file, "--count", "2", "--set", "thickness.value=5", "--set", "title=Thick"});
  CHECK(run.status == 0);
  for (const std::string words :
       {"Reference: Flat spruce", "Thick", "70.0 g", "140.0 g", "mass +100.0 %", "cents", "MAC", "M1 twist"})
  {
    CAPTURE(words);
    CHECK(run.out.find(words) != std::string::npos);
  }
  const std::string caution = "A prediction does not replace a test piece.\n";
  CHECK(run.out.find(caution) == run.out.size() - caution.size());
}
