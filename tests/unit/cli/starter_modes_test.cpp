// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <map>
#include <string>

using nlohmann::json;
using namespace plate::test;

namespace
{

struct Range
{
  double low;
  double high;
};

/// What makers find on free tops with f-holes and bar, Hz and g: common practice, no source. Where they state no range
/// none is checked (0 to 1e9).
struct UsualTop
{
  const char* family;
  Range M1, M2, M5, mass;
};

constexpr Range unstated{0.0, 1e9};
constexpr UsualTop usual_tops[] = {
    {"violin", {75, 95}, {140, 170}, {310, 370}, {60, 75}},
    {"viola", unstated, {110, 130}, {220, 260}, unstated},
    {"cello", unstated, {55, 65}, {120, 140}, {350, 450}},
};

/// Frequency of each mode that has a name, and the mass under "mass_g".
std::map<std::string, double> modes_of(const std::string& family, const std::string& make)
{
  const Workshop shop;
  const std::string file = shop.path("top.toml");
  REQUIRE(run_plate({"start", "--family", family, "--make", make, file}).status == 0);
  const Run run = run_plate({"modes", file, "--json", "--count", "9"});
  REQUIRE(run.status == 0);
  const json result = json::parse(run.out);
  CHECK(result.at("rigid_modes") == 6);
  std::map<std::string, double> found = {{"mass_g", result.at("mass_g")}};
  for (const json& mode : result.at("modes"))
    if (const std::string name = mode.at("name"); !name.empty())
      found[name] = mode.at("frequency_hz");
  return found;
}

void check_inside(double value, Range range)
{
  CHECK(value >= range.low);
  CHECK(value <= range.high);
}

} // namespace

TEST_CASE("wooden starters sound like free tops of their family, laminated ones like the wooden ones")
{
  for (const UsualTop& usual : usual_tops)
  {
    CAPTURE(usual.family);
    const std::map<std::string, double> wood = modes_of(usual.family, "wood");
    check_inside(wood.at("M1"), usual.M1);
    check_inside(wood.at("M2"), usual.M2);
    check_inside(wood.at("M5"), usual.M5);
    check_inside(wood.at("mass_g"), usual.mass);
    // Makers look for M5 about twice M2, others measured up to 2.3 (common practice, no source).
    check_inside(wood.at("M5") / wood.at("M2"), {2.0, 2.3});

    // Near: within a semitone. Lighter, which is what laminates are made for.
    const std::map<std::string, double> laminate = modes_of(usual.family, "laminate");
    for (const char* name : {"M2", "M5"})
      CHECK(std::abs(12.0 * std::log2(laminate.at(name) / wood.at(name))) < 1.0);
    CHECK(laminate.at("mass_g") < wood.at("mass_g"));
  }
}
