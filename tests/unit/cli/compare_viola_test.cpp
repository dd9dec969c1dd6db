// SPDX-License-Identifier: MPL-2.0
#include "demo_designs.h"
#include "run_json.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <string>

using nlohmann::json;
using namespace plate::test;

TEST_CASE("the same design on two meshes: each mode finds itself, modal assurance above 0.99")
{
  for (const std::string& name : demo_designs)
  {
    CAPTURE(name);
    const json result = run_json({"compare", demo(name), demo(name), "--set", "mesh.size=9"});
    const json& design = result.at("designs").at(0);
    CHECK(design.at("unknowns") > 1.2 * result.at("reference_plate").at("unknowns").get<double>());
    CHECK(design.at("left_out_percent").get<double>() < 0.01);
    REQUIRE(design.at("pairs").size() == 12);
    for (const json& pair : design.at("pairs"))
    {
      CAPTURE(pair.at("reference_mode").get<int>());
      CHECK(pair.at("mode") == pair.at("reference_mode"));
      CHECK(pair.at("mac").get<double>() > 0.99);
      CHECK(std::abs(pair.at("cents").get<double>()) < 2.0);
    }
  }
}

TEST_CASE("the tapped modes of the example are paired with those of the spruce top")
{
  const json result = run_json(
      {"compare", demo("spruce_top"), "--measured", std::string(EXAMPLES_DIR) + "/viola/taps.csv", "--count", "5"});
  CHECK(result.at("paired_by") == "name and order");
  const json& pairs = result.at("designs").at(0).at("pairs");
  REQUIRE(pairs.size() == 5);
  for (const json& pair : pairs)
  {
    CHECK(pair.at("mode") == pair.at("reference_mode"));
    CHECK(pair.at("name") == pair.at("reference_name"));
  }
}
