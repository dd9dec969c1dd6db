// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <chrono>
#include <cstddef>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

TEST_CASE("an interrupted sweep ends with 130 and gives the points so far")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  const auto arguments = [&](const std::string& steps)
  {
    return std::vector<std::string>{"sweep", design,    "--key", "layup.angle", "--from", "0",      "--to",
                                    "45",    "--steps", steps,   "--count",     "2",      "--full", "--json"};
  };
  // The time of two points shows when a thousand are under way, however busy the machine is.
  const auto start = std::chrono::steady_clock::now();
  REQUIRE(run_plate(arguments("2")).status == 0);
  const std::chrono::duration<double> two_points = std::chrono::steady_clock::now() - start;
  const Run run = run_plate(arguments("1000"), 4.0 * two_points.count());
  CHECK(run.status == 130);
  const json result = json::parse(run.out);
  CHECK(result.at("complete") == false);
  const std::size_t finished = result.at("mass_g").size();
  CHECK(finished >= 1);
  CHECK(finished < 1000);
  CHECK(result.at("values").size() == finished);
  for (const json& track : result.at("tracks"))
    CHECK(track.at("frequency_hz").size() == finished);
}

TEST_CASE("a sweep that is interrupted while its reduced model is built ends at once")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  const Run run = run_plate({"sweep", design, "--set", "mesh.size=3", "--key", "layup.angle", "--from", "0", "--to",
                             "45", "--steps", "1000", "--json"},
                            2.0);
  CHECK(run.status == 130);
  CHECK(run.out.empty());
}

TEST_CASE("an interrupted match ends with 130 and gives the best so far")
{
  const Workshop shop;
  static_cast<void>(shop.write("flat.toml", quick_design()));
  // So many stacks take a minute.
  const std::string file = shop.write(
      "match.toml",
      "reference = \"flat.toml\"\nstart = \"flat.toml\"\n[available]\n"
      "materials = [\"carbon_ud\", \"flax_ud\", \"balsa\"]\nangles = \"any\"\n"
      "core_thickness = [1.0, 1.5, 2.0]\nthickness = { carbon_ud = [0.1], flax_ud = [0.3] }\n[wanted]\ncount = 6\n");
  // The time to the first stage shows when the search is under way, however busy the machine is.
  const auto start = std::chrono::steady_clock::now();
  REQUIRE(run_plate({"match", file, "--time", "0.001"}).status == 1);
  const std::chrono::duration<double> first_stage = std::chrono::steady_clock::now() - start;
  const Run run = run_plate({"match", file, "--json"}, 3.0 * first_stage.count());
  CHECK(run.status == 130);
  const json result = json::parse(run.out);
  CHECK(result.at("complete") == false);
  CHECK(result.at("evaluations").get<int>() > 0);
}

TEST_CASE("an interrupted run of modes ends with 130 and leaves nothing")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  // So fine a mesh takes tens of seconds.
  const Run run =
      run_plate({"modes", design, "--set", "mesh.size=1.5", "--count", "60", "--out", shop.path("out")}, 1.0);
  CHECK(run.status == 130);
  CHECK(run.out.empty());
  CHECK(shop.content() == std::set<std::string>{"flat.toml"});
}
