// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cstddef>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

TEST_CASE("sweep follows modes over a key")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  const Run run = run_plate({"sweep", design, "--key", "layup.scale", "--from", "0.5", "--to", "1", "--steps", "3",
                             "--count", "4", "--json", "--out", shop.path("out")});
  CHECK(run.status == 0);
  const json result = json::parse(run.out);
  CHECK(result.at("keys") == json({"layup.scale"}));
  CHECK(result.at("values") == json({{0.5}, {0.75}, {1.0}}));
  REQUIRE(result.at("mass_g").size() == 3);
  REQUIRE(result.at("tracks").size() == 4);
  CHECK(result.at("mass_g").at(0).get<double>() == doctest::Approx(35.0).epsilon(1e-6));
  for (const json& track : result.at("tracks"))
  {
    CHECK(track.at("name").is_string());
    REQUIRE(track.at("frequency_hz").size() == 3);
    // A thin flat plate: frequency in proportion to thickness (Kirchhoff), shear and rotary inertia take a little off.
    const double ratio = track.at("frequency_hz").at(2).get<double>() / track.at("frequency_hz").at(0).get<double>();
    CHECK(ratio > 1.98);
    CHECK(ratio < 2.0);
  }
  CHECK(shop.content("out") == std::set<std::string>{"sweep.csv", "sweep.json", "sweep.png", "sweep.svg"});
  CHECK(bytes_of(shop.path("out/sweep.json")) == run.out);
}

TEST_CASE("sweep of two keys runs over the grid with the last key fastest")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  const std::vector<std::string> arguments = {
      "sweep",   design,  "--key",       "thickness.value", "--from",        "2",    "--to", "3",       "--steps",
      "2",       "--key", "layup.angle", "--from",          "-10",           "--to", "0",    "--steps", "2",
      "--count", "2",     "--json",      "--out",           shop.path("out")};
  const Run run = run_plate(arguments);
  CHECK(run.status == 0);
  const json result = json::parse(run.out);
  CHECK(result.at("keys") == json({"thickness.value", "layup.angle"}));
  CHECK(result.at("values") == json({{2, -10}, {2, 0}, {3, -10}, {3, 0}}));
  CHECK(result.at("mass_g").at(2).get<double>() == doctest::Approx(84.0).epsilon(1e-6));
  CHECK(shop.content("out") ==
        std::set<std::string>{"sweep.csv", "sweep.json", "sweep_1.png", "sweep_1.svg", "sweep_2.png", "sweep_2.svg"});
  CHECK(run_plate(arguments).out == run.out);
}

TEST_CASE("the table of a sweep has a line for each point and ends with the caution")
{
  const Workshop shop;
  const Run run = run_plate({"sweep", shop.write("flat.toml", quick_design()), "--key", "thickness.value", "--from",
                             "2", "--to", "3", "--steps", "2", "--count", "2"});
  CHECK(run.status == 0);
  CHECK(run.out.find("thickness.value mm") != std::string::npos);
  CHECK(run.out.find("56.0") != std::string::npos); // g, at 2 mm
  CHECK(run.out.find("84.0") != std::string::npos); // g, at 3 mm
  CHECK(run.out.find("A prediction does not replace a test piece.\n") != std::string::npos);
}

TEST_CASE("sweep of the temperature of the air: warmer air is lighter")
{
  const Workshop shop;
  const Run run =
      run_plate({"sweep", shop.write("flat.toml", quick_design()), "--set", "surroundings.air=free", "--key",
                 "surroundings.temperature", "--from", "0", "--to", "40", "--steps", "2", "--count", "2", "--json"});
  CHECK(run.status == 0);
  const json result = json::parse(run.out);
  CHECK(result.at("in_air") == true);
  for (const json& track : result.at("tracks"))
  {
    // A drop of 2 to 3.4 % in proportion to the density, of which 12.8 % go.
    const double rise =
        track.at("frequency_hz").at(1).get<double>() / track.at("frequency_hz").at(0).get<double>() - 1.0;
    CHECK(rise > 0.0022);
    CHECK(rise < 0.0050);
  }
}

TEST_CASE("many points on one mesh come from a reduced model and agree with full solves")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  std::vector<std::string> arguments = {"sweep", design,    "--key", "layup.scale", "--from", "0.8",
                                        "--to",  "1.2",     "--steps", "25",        "--count", "4",
                                        "--json"};
  const Run run = run_plate(arguments);
  CHECK(run.status == 0);
  const json reduced = json::parse(run.out);
  CHECK(reduced.at("reduced_points") == 25);
  CHECK(reduced.at("reduced_error_percent").get<double>() < 0.002);
  arguments.insert(arguments.end(), {"--threads", "2"});
  CHECK(run_plate(arguments).out == run.out);
  arguments.emplace_back("--full");
  const json full = json::parse(run_plate(arguments).out);
  CHECK(full.at("reduced_points") == 0);
  for (std::size_t track = 0; track < 4; ++track)
  {
    CHECK(reduced.at("tracks").at(track).at("name") == full.at("tracks").at(track).at("name"));
    for (std::size_t point = 0; point < 25; ++point)
    {
      // The reduced model keeps the strips along the edges as they are in the middle of the range, a full sweep moves
      // them with the thickness: that is the error of the mesh, a few hundredths of a percent (MeshOptions::size).
      const double f = full.at("tracks").at(track).at("frequency_hz").at(point).get<double>();
      CHECK(reduced.at("tracks").at(track).at("frequency_hz").at(point).get<double>() ==
            doctest::Approx(f).epsilon(5e-4));
      CHECK(reduced.at("mass_g").at(point).get<double>() ==
            doctest::Approx(full.at("mass_g").at(point).get<double>()).epsilon(1e-6));
    }
  }
  const Run table = run_plate({"sweep", design, "--key", "layup.scale", "--from", "0.8", "--to", "1.2", "--steps", "25",
                               "--count", "2"});
  CHECK(table.out.find("25 points from a reduced model") != std::string::npos);
}
