// SPDX-License-Identifier: MPL-2.0
#include "check_refused.h"
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

namespace
{

/// Two files of the quick plate, the second with a title and thickness of its own.
struct TwoDesigns
{
  Workshop shop;
  std::string thin = shop.write("thin.toml", quick_design());
  std::string thick = shop.write(
      "thick.toml", replaced(replaced(quick_design(), "Flat spruce", "Thick spruce"), "value = 2.5", "value = 5.0"));

  static std::string replaced(std::string text, const std::string& old_words, const std::string& new_words)
  {
    const std::size_t at = text.find(old_words);
    REQUIRE(at != std::string::npos);
    return text.replace(at, old_words.size(), new_words);
  }
};

} // namespace

TEST_CASE("beside gives the second design under its own key, as if it had been computed alone")
{
  const TwoDesigns designs;
  const Run both = run_plate({"modes", designs.thin, "--beside", designs.thick, "--json", "--count", "4"});
  CHECK(both.status == 0);
  CHECK(both.err.empty());
  json result = json::parse(both.out);
  const json beside = result.at("beside");
  CHECK(beside.at("title") == "Thick spruce");
  CHECK(beside == json::parse(run_plate({"modes", designs.thick, "--json", "--count", "4"}).out));
  const json pairs = result.at("pairs");
  result.erase("beside");
  result.erase("pairs");
  CHECK(result == json::parse(run_plate({"modes", designs.thin, "--json", "--count", "4"}).out));
  REQUIRE(pairs.size() == 4);
  for (const json& pair : pairs)
  {
    // A plate twice as thick: twice the frequency (Kirchhoff), less what shear and rotary inertia take. That grows with
    // the square of the thickness: under 1 % at half of it (test of the sweep), so under 4 % here.
    CHECK(pair.at("difference_percent").get<double>() > 92.0);
    CHECK(pair.at("difference_percent").get<double>() < 100.0);
    CHECK(pair.at("cents").get<double>() ==
          doctest::Approx(1200.0 * std::log2(1.0 + pair.at("difference_percent").get<double>() / 100.0)));
  }
}

TEST_CASE("modes of one trade name are paired, the rest in their order")
{
  // Stiff along and across exchanged on an oblong: twist and X change places, as the plate bends first where it is
  // long.
  const TwoDesigns designs;
  const Run run = run_plate({"modes", designs.thin, "--beside", designs.thin, "--json", "--set", "layup.angle=90"});
  const json result = json::parse(run.out);
  const auto name = [](const json& modes, const json& number)
  { return modes.at(number.get<std::size_t>() - 1).at("name").get<std::string>(); };
  std::vector<std::string> shared;
  int rest = 0; // number of the last mode of the second design without a shared name
  for (const json& pair : result.at("pairs"))
  {
    const std::string first = name(result.at("modes"), pair.at("mode"));
    const std::string second = name(result.at("beside").at("modes"), pair.at("beside_mode"));
    CHECK(first == second);
    if (!first.empty())
      shared.push_back(first);
    else
    {
      CHECK(pair.at("beside_mode").get<int>() > rest);
      rest = pair.at("beside_mode").get<int>();
    }
  }
  CHECK(result.at("pairs").size() == 12);
  CHECK(shared == std::vector<std::string>{"M2", "M1", "M5"}); // in the order of the first design
  CHECK(result.at("pairs").at(0).at("beside_mode") == 2);
}

TEST_CASE("overrides act on the first design only")
{
  const TwoDesigns designs;
  const Run run = run_plate(
      {"modes", designs.thin, "--beside", designs.thin, "--json", "--count", "1", "--set", "thickness.value=5"});
  const json result = json::parse(run.out);
  CHECK(result.at("mass_g").get<double>() == doctest::Approx(140.0).epsilon(1e-6)); // 350 x 200 x 5 mm, 400 kg/m3
  CHECK(result.at("beside").at("mass_g").get<double>() == doctest::Approx(70.0).epsilon(1e-6));
  CHECK(run_plate({"modes", "--help"}).out.find("--set acts on the first only") != std::string::npos);
}

TEST_CASE("beside prints both tables and the differences")
{
  const TwoDesigns designs;
  const Run run = run_plate({"modes", designs.thin, "--beside", designs.thick, "--count", "2"});
  CHECK(run.status == 0);
  for (const std::string words : {"Flat spruce", "Thick spruce", "70.0 g", "140.0 g", "cents", "M1 twist"})
  {
    CAPTURE(words);
    CHECK(run.out.find(words) != std::string::npos);
  }
  const std::string caution = "A prediction does not replace a test piece.\n";
  CHECK(run.out.find(caution) == run.out.size() - caution.size()); // once, at the end
}

TEST_CASE("beside adds a picture of both, the same bytes on each run")
{
  const TwoDesigns designs;
  for (const std::string folder : {"one", "two"})
    CHECK(run_plate(
              {"modes", designs.thin, "--beside", designs.thick, "--count", "2", "--out", designs.shop.path(folder)})
              .status == 0);
  const std::set<std::string> files = designs.shop.content("one");
  CHECK(files == designs.shop.content("two"));
  for (const std::string name : {"side_by_side.png", "side_by_side.svg", "modes.png", "modes.json"})
  {
    CAPTURE(name);
    CHECK(files.count(name) == 1);
    const bool same = bytes_of(designs.shop.path("one/" + name)) == bytes_of(designs.shop.path("two/" + name));
    CHECK(same);
  }
}

TEST_CASE("slips with beside are answered")
{
  const TwoDesigns designs;
  check_refused(run_plate({"modes", designs.thin, "--beside"}), "--beside");
  check_refused(run_plate({"modes", designs.thin, "--beside", ""}), "--beside: the name of a design file is missing");
  check_refused(run_plate({"modes", designs.thin, "--beside", designs.shop.path("none.toml")}), "none.toml");
  check_refused(run_plate({"sweep", designs.thin, "--beside", designs.thick}), "--beside");
  const std::string wrong = designs.shop.write("wrong.toml", quick_design() + "[arching]\nheigth = 3\n");
  check_refused(run_plate({"modes", designs.thin, "--beside", wrong, "--out", designs.shop.path("out")}),
                "wrong.toml:24: arching.heigth = 3: unknown key; nearest: arching.height");
  CHECK(designs.shop.content() == std::set<std::string>{"thin.toml", "thick.toml", "wrong.toml"});
}
