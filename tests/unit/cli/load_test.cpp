// SPDX-License-Identifier: MPL-2.0
#include "load_runs.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <sstream>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

TEST_CASE("load prints JSON with the promised keys")
{
  const Workshop shop;
  const json result = load_of(shop.write("flat.toml", quick_design()),
                              {"--set", "strings.tension=[60,58,55,47]", "--set", "strings.angle=22"});
  CHECK(result.at("title") == "Flat spruce");
  CHECK(result.at("strings").at("tension_n") == 220.0);
  // 2 T sin(angle / 2): 220 N and 22 degrees give 83.956 N, worked by hand.
  CHECK(result.at("strings").at("downforce_n").get<double>() == doctest::Approx(83.956).epsilon(1e-5));
  CHECK(result.at("rim") == "hinged");
  const json& strings = case_of(result, "strings");
  CHECK(strings.at("deflection_mm").get<double>() < 0.0);
  CHECK(strings.at("margin").get<double>() > 0.0);
  CHECK(strings.at("where").size() == 2);
  CHECK(strings.at("ply") == 1);
  CHECK(strings.at("material") == "spruce");
  CHECK(strings.at("buckling_factor").is_null()); // flat: no force in the surface
  for (const json& entry : result.at("cases"))
  {
    CHECK(entry.at("in_equilibrium") == true);
    CHECK(entry.at("work_j").get<double>() ==
          doctest::Approx(2.0 * entry.at("energy_j").get<double>()).epsilon(1e-7)); // nine digits are printed
  }
  CHECK(result.at("cautions").size() >= 5);
  CHECK(result.at("strengths").at(0).at("in_plane_mpa").at("Xc") == 35.7); // Sitka spruce, Wood Handbook table 5-3a
  CHECK(result.at("without_strength").empty());
}

TEST_CASE("an arch under strings has a buckling factor and lower frequencies")
{
  const Workshop shop;
  const json result = load_of(shop.write("flat.toml", quick_design()),
                              {"--set", "arching.kind=biparabolic", "--set", "arching.height=15"});
  CHECK(case_of(result, "strings").at("buckling_factor").get<double>() > 1.0);
  CHECK(result.at("loaded_frequencies_hz").at(0).get<double>() < result.at("frequencies_hz").at(0).get<double>());
}

TEST_CASE("knock-downs of wood under strings stand apart from the margin")
{
  const Workshop shop;
  const json result = load_of(shop.write("flat.toml", quick_design()), {"--set", "knock_down.sustained_wood=0.5"});
  const json& strings = case_of(result, "strings");
  CHECK(strings.at("knock_downs").at("sustained_wood") == 0.5);
  CHECK(strings.at("reduced_margin").get<double>() ==
        doctest::Approx(0.5 * strings.at("margin").get<double>()).epsilon(1e-8));
  CHECK(case_of(result, "thumb").at("knock_downs").empty());
  CHECK(case_of(result, "thumb").at("reduced_margin") == case_of(result, "thumb").at("margin"));
}

TEST_CASE("load prints a table, and its cautions last")
{
  const Workshop shop;
  const Run run = run_plate({"load", shop.write("flat.toml", quick_design())});
  CHECK(run.status == 0);
  CHECK(holds(run.out, "Flat spruce"));
  CHECK(holds(run.out, "does not make the plate buckle"));
  CHECK(holds(run.out, "sustained_wood 0.6"));
  CHECK(holds(run.out, "Strings store energy"));
  CHECK(holds(run.out, "behind a guard"));
  CHECK(holds(run.out, "creep"));
  CHECK(holds(run.out, "Local rules and licensed practice come first."));
  const std::string last = "A prediction does not replace a test piece.\n";
  CHECK(run.out.substr(run.out.size() - last.size()) == last);
}

TEST_CASE("a reference beside: a plate beside itself has ratios of one, a stronger material a larger margin")
{
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  const std::string strong =
      "strength = { Xt = 130, Xc = 71.4, Yt = 5.2, Yc = 6.0, S = 13.4, S13 = 13.4, S23 = 2.68 }\n";
  const json result = load_of(shop.write("strong.toml", quick_design() + strong), {"--reference", file});
  for (const json& entry : result.at("beside_reference"))
  {
    CHECK(entry.at("deflection_ratio").get<double>() == doctest::Approx(1.0));
    CHECK(entry.at("margin_ratio").get<double>() == doctest::Approx(2.0)); // all strengths doubled
  }
  CHECK(result.at("reference").at("cases").size() == result.at("cases").size());
}

TEST_CASE("the table beside a reference says which column is whose")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  const std::string text = quick_design();
  const std::string reference = shop.write("other.toml", "title = \"The other\"\n" + text.substr(text.find('\n') + 1));
  const Run run = run_plate({"load", design, "--set", "handling.thumb=40", "--reference", reference});
  REQUIRE(run.status == 0);
  CHECK(holds(run.out, "here: Flat spruce\nref.: The other\n"));
  const std::size_t table = run.out.find("mm here");
  REQUIRE(table != std::string::npos);
  std::istringstream row(run.out.substr(run.out.find("thumb", table)));
  std::string name;
  double here = 0.0;
  double reference_mm = 0.0;
  row >> name >> here >> reference_mm;
  // Twice the default 20 N in the design: --set is not about the reference.
  CHECK(here / reference_mm == doctest::Approx(2.0).epsilon(0.02)); // printed to 0.001 mm
}

TEST_CASE("load writes its files, the same on every run")
{
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  for (const char* folder : {"a", "b"})
    REQUIRE(run_plate({"load", file, "--out", shop.path(folder)}).status == 0);
  for (const char* name : {"load.json", "load.csv", "load.vtu", "deflection_strings.png", "deflection_strings.svg",
                           "strength_thumb.png", "strength_two_fingers.svg"})
  {
    const std::string first = bytes_of(shop.path(std::string("a/") + name));
    CHECK(first.size() > 100);
    CHECK(first == bytes_of(shop.path(std::string("b/") + name)));
  }
}

TEST_CASE("a softer rim lets the plate sink further")
{
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  const auto sink = [&](const char* rim) {
    return -case_of(load_of(file, {"--rim", rim}), "strings").at("deflection_mm").get<double>();
  };
  CHECK(sink("clamped") < sink("hinged"));
  CHECK(sink("hinged") <= sink("rest") * (1.0 + 1e-9)); // flat: nothing moves along the rim
  const Run wrong = run_plate({"load", file, "--rim", "glued"});
  CHECK(wrong.status == 2);
  CHECK(holds(wrong.err, "--rim"));
}

TEST_CASE("what cannot be loaded is refused with its place and what to do")
{
  const Workshop shop;
  const std::string file = shop.write("flat.toml", quick_design());
  const auto refused = [&](const std::string& set, const std::vector<std::string>& parts)
  {
    const Run run = run_plate({"load", file, "--set", set});
    CHECK(run.status == 2);
    CHECK(run.out.empty());
    for (const std::string& part : parts)
      CHECK_MESSAGE(holds(run.err, part), run.err);
  };
  refused("handling.thumb_at=[500,0]", {"handling.thumb_at", "beside the plate"});
  refused("soundpost.at=[0,900]", {"soundpost.at", "beside the plate"});
  refused("setup.bridge_feet=300", {"setup.bridge_feet", "beside the plate"});
  refused("soundpost.diameter=6", {"soundpost.at", "missing"});
  refused("strings.tension=[60,58]", {"strings.tension"});
  refused("strings.angle=0", {"strings.angle", "greater than 0"});
  refused("knock_down.hot_wet=1.2", {"knock_down.hot_wet", "at most 1"});
  refused("material.spruce.strength.S13=5", {"S13", "missing: S23"});
  const Run oak = run_plate({"load", file, "--set", "soundpost.at=[0,0]", "--set", "soundpost.material=oak"});
  CHECK(oak.status == 2);
  CHECK(holds(oak.err, "no material of the name"));
}

TEST_CASE("stress of the cure lowers the margin of a laminate and needs the expansion of its plies")
{
  const Workshop shop;
  const std::string plate = "title = \"Cured\"\n[outline]\nkind = \"rectangle\"\nlength = 300\nwidth = 200\n"
                            "[material.tape]\nE1 = 181\nE2 = 10.3\nG12 = 7.17\nnu12 = 0.28\ndensity = 1600\n"
                            "strength = { Xt = 1500, Xc = 1500, Yt = 40, Yc = 246, S = 68 }\n";
  const std::string layup =
      "[layup]\ncode = \"[0/90]s\"\nply = { material = \"tape\", thickness = 0.3 }\n[mesh]\nsize = 30\n";
  const std::string known = shop.write("known.toml", plate + "expansion = [0.02, 22.5]\n" + layup);
  const double cold = case_of(load_of(known), "strings").at("margin").get<double>();
  const double cured =
      case_of(load_of(known, {"--set", "layup.cure_temperature=120"}), "strings").at("margin").get<double>();
  CHECK(cured < 0.95 * cold);
  const Run unknown =
      run_plate({"load", shop.write("unknown.toml", plate + layup), "--set", "layup.cure_temperature=120"});
  CHECK(unknown.status == 2);
  CHECK(holds(unknown.err, "material.tape.expansion"));
}
