// SPDX-License-Identifier: MPL-2.0
#include "check_refused.h"
#include "load_runs.h"
#include "quick_body.h"
#include "run_json.h"

#include <doctest/doctest.h>

#include <cmath>
#include <set>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

namespace
{

/// The box with blocks for the strings to pull at, and a post behind one foot of the bridge.
const char* const strung = "[linings]\nheight = 0\n[blocks]\nend = [60, 12]\ncorner = [0, 0]\n"
                           "[soundpost]\nat = [-10, -15]\n";

} // namespace

TEST_CASE("load of a body prints JSON with the promised keys")
{
  const Workshop shop;
  const json result = load_of(write_box(shop, strung), {"--set", "strings.tension=[60,58,55,47]"});
  CHECK(result.at("title") == "Box");
  const json& strings = result.at("strings");
  CHECK(strings.at("tension_n") == 220.0);
  // Bridge 33 + 1.25 mm over the mid-surface, 175 mm before the edge: 11.07 degrees to the lower end but for its lean,
  // so that 10.93 of the 22 are left to the neck. The press of 2 T sin(11 deg) = 83.956 N stands on the lean. By hand.
  CHECK(strings.at("neck_angle_degrees").get<double>() == doctest::Approx(10.93).epsilon(1e-3));
  CHECK(strings.at("downforce_n").get<double>() == doctest::Approx(83.956).epsilon(1e-5));
  CHECK(strings.at("soundpost").at(0).at("force_n").get<double>() + strings.at("top_edge_n").get<double>() ==
        doctest::Approx(strings.at("downforce_n").get<double>()).epsilon(1e-8));
  CHECK(strings.at("soundpost").at(0).at("share").get<double>() > 0.1);
  std::set<std::string> names;
  for (const json& entry : result.at("cases"))
  {
    names.insert(entry.at("case"));
    CHECK(entry.at("in_equilibrium") == true);
    CHECK(entry.at("work_j").get<double>() ==
          doctest::Approx(2.0 * entry.at("energy_j").get<double>()).epsilon(1e-7)); // nine digits are printed
    CHECK(entry.at("where").size() == 3);
    std::set<std::string> parts;
    for (const json& part : entry.at("parts"))
    {
      parts.insert(part.at("part"));
      CHECK(part.at("margin").get<double>() >= entry.at("margin").get<double>());
      CHECK(part.at("reduced_margin").get<double>() >= entry.at("reduced_margin").get<double>());
    }
    CHECK(parts == std::set<std::string>{"top", "back", "ribs", "blocks"});
  }
  CHECK(names == std::set<std::string>{"strings", "thumb", "squeeze", "wing"});
  const json& pull = case_of(result, "strings");
  CHECK(pull.at("deflection_mm").get<double>() < 0.0);
  CHECK(pull.at("buckling_factor").get<double>() > 1.0);
  CHECK(result.at("frequencies_hz").size() == 3);
  CHECK(result.at("loaded_frequencies_hz").at(0).get<double>() < result.at("frequencies_hz").at(0).get<double>());
  CHECK(result.at("cautions").size() >= 5);
  for (const json& name : result.at("without_strength")) // stiffness that blocks lend the plates, no part that fails
    CHECK(name.get<std::string>().ends_with(" of a block"));
}

TEST_CASE("the modes beside those under strings are the body's own")
{
  const Workshop shop;
  const std::string file = write_box(shop, strung);
  const json load = load_of(file);
  const json body = run_json({"body", file, "--count", "3"});
  for (std::size_t i = 0; i < 3; ++i) // from fewer motions of the structure
    CHECK(load.at("frequencies_hz").at(i).get<double>() ==
          doctest::Approx(body.at("modes").at(i).at("frequency_hz").get<double>()).epsilon(2e-3));
}

TEST_CASE("a body without a post hands all to its edge, knock-downs of the file count")
{
  const Workshop shop;
  const std::string no_post = "[linings]\nheight = 0\n[blocks]\nend = [60, 12]\ncorner = [0, 0]\n";
  const json result = load_of(write_box(shop, no_post), {"--set", "knock_down.sustained_wood=0.5"});
  const json& strings = result.at("strings");
  CHECK(strings.at("soundpost").empty());
  CHECK(strings.at("top_edge_n") == strings.at("downforce_n"));
  const json& pull = case_of(result, "strings");
  CHECK(pull.at("reduced_margin").get<double>() ==
        doctest::Approx(0.5 * pull.at("margin").get<double>()).epsilon(1e-8));
  CHECK(case_of(result, "squeeze").at("reduced_margin") == case_of(result, "squeeze").at("margin"));
}

TEST_CASE("load of a body prints tables, what they rest on, and its cautions last")
{
  const Workshop shop;
  const std::string file = write_box(shop, strung);
  const Run run = run_plate({"load", file, "--reference", file});
  REQUIRE(run.status == 0);
  for (const char* part :
       {"Box\n", "the soundpost carries", "into the back", "into the ribs", "feet of the bridge sink",
        "margin (reduced)", "buckling at", "modes with the air", "here: Box\nref.: Box\n", "sustained_wood 0.6",
        "hangs free", "Strings store energy", "behind a guard", "Local rules and licensed practice come first."})
    CHECK_MESSAGE(holds(run.out, part), part);
  const std::string last = "A prediction does not replace a test piece.\n";
  CHECK(run.out.substr(run.out.size() - last.size()) == last);
}

TEST_CASE("a body beside itself has ratios of one, --set is about the first")
{
  const Workshop shop;
  const std::string file = write_box(shop, strung);
  const json result = load_of(file, {"--reference", file, "--set", "handling.thumb=40"});
  REQUIRE(result.at("beside_reference").size() == 4);
  for (const json& entry : result.at("beside_reference"))
  {
    const double twice = entry.at("case") == "thumb" ? 2.0 : 1.0;
    CHECK(entry.at("deflection_ratio").get<double>() == doctest::Approx(twice).epsilon(1e-8));
    CHECK(entry.at("margin_ratio").get<double>() == doctest::Approx(1.0 / twice).epsilon(1e-8));
  }
}

TEST_CASE("load of a body writes its files, the same on every run and with any number of threads")
{
  const Workshop shop;
  const std::string file = write_box(shop, strung);
  for (const char* threads : {"1", "2"})
    REQUIRE(run_plate({"load", file, "--threads", threads, "--out", shop.path(threads)}).status == 0);
  for (const char* name :
       {"load.json", "load.csv", "top.vtu", "back.vtu", "ribs.vtu", "blocks.vtu", "deflection_strings.png",
        "deflection_squeeze.svg", "strength_thumb.png", "strength_wing.svg"})
  {
    const std::string first = bytes_of(shop.path(std::string("1/") + name));
    CAPTURE(name);
    CHECK(first.size() > 100);
    CHECK(first == bytes_of(shop.path(std::string("2/") + name)));
  }
}

TEST_CASE("the post of the demo body carries the same on a finer mesh")
{
  const std::string file = std::string(EXAMPLES_DIR) + "/viola/body/wooden_body.toml";
  const auto post = [](const json& result)
  { return result.at("strings").at("soundpost").at(0).at("force_n").get<double>(); };
  const double usual = post(load_of(file));
  // Meshes of 30, 22.5, 18, 16 and 12 mm: 29.8, 29.64, 29.65, 29.6 and 29.6 N. Triangles of 30 mm lie across the
  // blocks.
  CHECK(post(load_of(file, {"--set", "mesh.size=18"})) == doctest::Approx(usual).epsilon(3e-3).scale(0.0));
  CHECK(usual > 20.0);
  CHECK(usual < 40.0);
}

TEST_CASE("what cannot be loaded as a body is refused")
{
  const Workshop shop;
  const std::string file = write_box(shop, strung);
  const auto refused = [&](const std::string& set, const std::string& text) {
    check_refused(run_plate({"load", file, "--set", set}), text);
  };
  refused("handling.thumb_at=[500,0]", "handling.thumb_at");
  refused("handling.lift=3", "is about a bare plate");
  refused("handling.sqeeze=3", "handling.squeeze");
  refused("handling.squeeze=0", "greater than 0");
  refused("bridge.height=0", "bridge.height");
  refused("bridge.height=80", "take a lower bridge or a larger angle");
  refused("blocks.end=[0,0]", "blocks.end");
  refused("knock_down.hot_wet=1.2", "at most 1");
  check_refused(run_plate({"load", file, "--rim", "hinged"}), "--rim");
  check_refused(run_plate({"load", file, "--reference", shop.path("top.toml")}), "give a body");
  check_refused(run_plate({"load", shop.path("top.toml"), "--reference", file}), "give a plate");
  check_refused(run_plate({"load", file, "--reference", shop.path("none.toml")}), "none.toml");
  check_refused(run_plate({"load", shop.path("top.toml"), "--set", "handling.squeeze=20"}), "is about the ribs");
  const std::string other = shop.write("wrong.toml", quick_box() + "[handling]\nthumb = 20\nthum_at = [0, 0]\n");
  check_refused(run_plate({"load", other}), "wrong.toml:13: handling.thum_at");
}
