// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using nlohmann::json;
using namespace plate::test;

TEST_CASE("--accuracy works on an arched plate in air with f-holes, bar and patch")
{
  const Workshop shop;
  const std::string design = shop.write("loaded.toml", R"(
[outline]
kind = "bouts"
length = 405.0
lower_bout = 236.0
centre_bout = 131.0
upper_bout = 193.0
[arching]
kind = "cycloid"
height = 12.1
[layup]
code = "[0/90]s"
ply = { material = "carbon_ud", thickness = 0.3 }
[[soundhole]]
kind = "f"
length = 80.0
[bar]
material = "spruce"
length = 250.0
width = 6.0
height = 12.0
end_height = 3.0
offset = 18.0
[[patch]]
side = "inside"
shape = "ellipse"
centre = [10.0, 5.0]
axes = [60.0, 35.0]
plies = [{ material = "carbon_ud", thickness = 0.2, angle = 0.0 }]
[surroundings]
air = "free"
[mesh]
size = 24.0
)");
  const Run run = run_plate({"modes", design, "--json", "--count", "3", "--accuracy", "0.2"});
  CHECK(run.status == 0);
  const json result = json::parse(run.out);
  CHECK(result.at("in_air") == true);
  CHECK(result.at("accuracy").at("reached") == true);
  REQUIRE(result.at("modes").size() == 3);
  for (const json& mode : result.at("modes"))
  {
    CHECK(mode.at("error_hz").get<double>() > 0.0);
    CHECK(mode.at("error_hz").get<double>() <= 0.00202 * mode.at("frequency_hz").get<double>()); // three digits
  }
}
