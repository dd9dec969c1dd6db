// SPDX-License-Identifier: MPL-2.0
#include "run_json.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

namespace
{

/// A rectangle with a layup of some plies, coarse mesh.
std::string laminated(const std::string& plies)
{
  return "title = \"Small plate\"\n[outline]\nkind = \"rectangle\"\nlength = 200\nwidth = 120\n[mesh]\nsize = 30\n"
         "[layup]\nplies = [" +
         plies + "]\n";
}

const std::string hidden = "{ material = \"carbon_ud\", thickness = 0.2, angle = 0 },"
                           "{ material = \"flax_ud\", thickness = 0.3, angle = 45 },"
                           "{ material = \"balsa\", thickness = 1.0 },"
                           "{ material = \"flax_ud\", thickness = 0.3, angle = 45 },"
                           "{ material = \"carbon_ud\", thickness = 0.2, angle = 0 }";

std::string problem(const std::string& reference, const std::string& wanted)
{
  return "title = \"Find it\"\n" + reference +
         "start = \"start.toml\"\n[available]\nmaterials = [\"carbon_ud\", \"flax_ud\", \"balsa\"]\nmax_plies = 4\n"
         "core_thickness = [1.0, 1.5]\nthickness = { carbon_ud = [0.2], flax_ud = [0.3] }\n[wanted]\n" +
         wanted;
}

struct MatchShop : Workshop
{
  MatchShop()
  {
    static_cast<void>(write("reference.toml", laminated(hidden)));
    static_cast<void>(write("start.toml", laminated("{ material = \"flax_ud\", thickness = 1.0 }")));
  }
};

} // namespace

TEST_CASE("match finds the layup of its reference, and writes designs that other commands take")
{
  const MatchShop shop;
  const std::string file = shop.write("match.toml", problem("reference = \"reference.toml\"\n", "count = 6\n"));
  const json result = run_json({"match", file, "--out", shop.path("out")});
  CHECK(result.at("evaluations").get<int>() > 100);
  CHECK(result.at("complete").get<bool>());
  CHECK(result.at("targets").size() == 6);
  const json best = result.at("candidates").at(0);
  CHECK(best.at("layup") == "[0 carbon_ud 0.2/45 flax_ud 0.3/~balsa 1]s");
  CHECK(best.at("score").get<double>() < 0.1);
  CHECK(best.at("mass_g").get<double>() == doctest::Approx(result.at("reference_mass_g").get<double>()).epsilon(1e-6));
  const std::set<std::string> files = shop.content("out");
  for (const char* name : {"match.json", "match.csv", "laminate_1.toml", "mismatch_over_mass.svg",
                           "mismatch_over_mass.png", "side_by_side.svg", "side_by_side.png"})
    CHECK(files.count(name) == 1);

  const json solved = run_json({"modes", shop.path("out/laminate_1.toml")});
  for (const json& mode : best.at("modes"))
    CHECK(solved.at("modes").at(mode.at("mode").get<std::size_t>() - 1).at("frequency_hz").get<double>() ==
          doctest::Approx(mode.at("frequency_hz").get<double>()).epsilon(1e-7));
}

TEST_CASE("measured modes take the reference's place")
{
  const MatchShop shop;
  const json solved = run_json({"modes", shop.path("reference.toml")});
  std::string list = "mode,frequency_hz\n";
  for (std::size_t i = 0; i < 4; ++i)
    list += std::to_string(i + 1) + "," + solved.at("modes").at(i).at("frequency_hz").dump() + "\n";
  static_cast<void>(shop.write("taps.csv", list));
  const std::string file = shop.write("match.toml", problem("measured = \"taps.csv\"\n", "count = 4\n"));
  const json result = run_json({"match", file, "--set", "layup.plies.1.angle=10"});
  CHECK(result.at("reference_mass_g").is_null());
  CHECK(result.at("targets").size() == 4);
  CHECK(result.at("candidates").at(0).at("score").get<double>() < 100.0); // an order of shapes may differ, no more
}

TEST_CASE("losses as an aim: those of all laminates are told; a list without losses is refused")
{
  const MatchShop shop;
  const std::string file =
      shop.write("match.toml", problem("reference = \"reference.toml\"\n", "count = 3\nloss = 0.1\n"));
  const json best = run_json({"match", file}).at("candidates").at(0);
  CHECK(best.at("layup") == "[0 carbon_ud 0.2/45 flax_ud 0.3/~balsa 1]s"); // the reference's own losses
  const json solved = run_json({"modes", shop.path("reference.toml")});
  for (const json& mode : best.at("modes"))
    CHECK(mode.at("loss_percent").get<double>() ==
          doctest::Approx(
              solved.at("modes").at(mode.at("reference_mode").get<std::size_t>() - 1).at("loss_percent").get<double>())
              .epsilon(1e-6));
  static_cast<void>(shop.write("taps.csv", "mode,frequency_hz\n1,100\n2,150\n"));
  const Run refused =
      run_plate({"match", shop.write("match.toml", problem("measured = \"taps.csv\"\n", "count = 2\nloss = 0.1\n"))});
  CHECK(refused.status == 2);
  CHECK(refused.err.find("wanted.loss = 0.1: taps.csv gives in loss_percent nothing for mode 1") != std::string::npos);
}

TEST_CASE("patches that may change: the designs written have those that are told")
{
  const MatchShop shop;
  const auto patched = [](const std::string& plies)
  {
    return laminated(hidden) +
           "[[patch]]\nside = \"outside\"\nshape = \"ellipse\"\ncentre = [0, 0]\naxes = [90, 60]\n" + "plies = [" +
           plies + "]\n";
  };
  static_cast<void>(shop.write("reference.toml", laminated(hidden)));
  static_cast<void>(shop.write("start.toml", patched("{ material = \"carbon_ud\", thickness = 0.2, angle = 0 }")));
  std::string text = problem("reference = \"reference.toml\"\n", "count = 3\n");
  text.replace(text.find("max_plies = 4"), 13, "max_plies = 4\npatches = { max_plies = 1 }");
  const std::string file = shop.write("match.toml", text);
  const json result = run_json({"match", file, "--out", shop.path("out")});
  std::size_t number = 0;
  bool changed = false;
  for (const json& candidate : result.at("candidates"))
  {
    const json solved = run_json({"modes", shop.path("out/laminate_" + std::to_string(++number) + ".toml")});
    CHECK(solved.at("mass_g").get<double>() == doctest::Approx(candidate.at("mass_g").get<double>()).epsilon(1e-7));
    changed = changed || candidate.contains("patches");
  }
  CHECK(changed);
}

TEST_CASE("limits that nothing keeps to: what is nearest, and exit status 1")
{
  const MatchShop shop;
  const std::string file =
      shop.write("match.toml", problem("reference = \"reference.toml\"\n", "count = 4\nmass_g = { max = 0.5 }\n"));
  const Run run = run_plate({"match", file});
  CHECK(run.status == 1);
  CHECK(run.out.find("Nothing fits: no stack keeps to wanted.mass_g") != std::string::npos);
  CHECK(run.out.find("The nearest:") != std::string::npos);
}

TEST_CASE("a laminate shown has the margin wanted; the others are listed with theirs; none: the nearest, status 1")
{
  const MatchShop shop;
  const auto searched = [&](const std::string& wanted, int status)
  {
    const std::string file =
        shop.write("match.toml", problem("reference = \"reference.toml\"\n", "count = 4\n" + wanted));
    const Run run = run_plate({"match", file, "--json"});
    CAPTURE(run.err);
    CHECK(run.status == status);
    return json::parse(run.out);
  };
  // Shown when everything is strong enough: what the same laminates have.
  const json all = searched("margin = { min = 1e-6 }\n", 0);
  const double first = all.at("candidates").at(0).at("margin").at("least").get<double>();

  // The first is refused now.
  const double wanted = 1.01 * first;
  const std::string file =
      shop.write("strong.toml", problem("reference = \"reference.toml\"\n",
                                        "count = 4\nmargin = { min = " + std::to_string(wanted) + " }\n"));
  const Run strong = run_plate({"match", file, "--json"});
  const json result = json::parse(strong.out);
  REQUIRE(!result.at("refused").empty());
  CHECK(result.at("refused").at(0).at("layup") == all.at("candidates").at(0).at("layup"));
  CHECK(result.at("refused").at(0).at("margin").get<double>() < wanted);
  CHECK(strong.status == (result.at("fits").get<bool>() ? 0 : 1));
  if (result.at("fits").get<bool>())
    for (const json& candidate : result.at("candidates"))
      CHECK(candidate.at("margin").at("least").get<double>() >= wanted);

  const json none = searched("margin = { min = 1000.0 }\n", 1);
  CHECK(!none.at("fits").get<bool>());
  REQUIRE(none.at("candidates").size() == 1);
  for (const json& refused : none.at("refused"))
    if (!refused.at("margin").is_null()) // a plate so thin that its loads cannot be solved
      CHECK(refused.at("margin").get<double>() <= none.at("candidates").at(0).at("margin").at("least").get<double>());
  const Run words = run_plate({"match", shop.path("match.toml")});
  CHECK(words.out.find("Nothing fits: none of the") != std::string::npos);
  CHECK(words.out.find("refused: [") != std::string::npos);
}

TEST_CASE("a time limit before the first laminate: where the search was and what to do")
{
  const MatchShop shop;
  const std::string file = shop.write("match.toml", problem("reference = \"reference.toml\"\n", "count = 4\n"));
  const Run run = run_plate({"match", file, "--time", "0.001", "--json"});
  CHECK(run.status == 1);
  const json result = json::parse(run.out);
  CHECK(!result.at("complete").get<bool>());
  CHECK(result.at("candidates").empty());
  CHECK(result.at("stopped_at") == "considering stacks");
  CHECK(run.err.find("No laminate was found: the search was stopped at \"considering stacks\"") != std::string::npos);
  CHECK(run.err.find("--time") != std::string::npos);
}
