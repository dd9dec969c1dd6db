// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <numbers>
#include <sstream>
#include <string>

using nlohmann::json;
using namespace plate::test;

namespace
{

/// An ellipse of 300 x 200 mm in 60 points, the one in line 11 of the file 5 mm too far out.
std::string outline_points()
{
  std::ostringstream out;
  for (int k = 0; k < 60; ++k)
  {
    const double angle = 2.0 * std::numbers::pi * k / 60.0;
    const double off = k == 10 ? 5.0 : 0.0;
    out << 150.0 * std::cos(angle) << ';' << 100.0 * std::sin(angle) + off << '\n';
  }
  return out.str();
}

std::string design_with(const std::string& file)
{
  return "[outline]\nkind = \"points\"\nfile = \"" + file +
         "\"\n[thickness]\nvalue = 2.5\n[layup]\nsolid = \"spruce\"\n[mesh]\nsize = 30\n";
}

} // namespace

TEST_CASE("modes reports how well a measured outline fits and warns of its outliers")
{
  const Workshop shop;
  shop.write("edge.csv", outline_points());
  const std::string design = shop.write("top.toml", design_with("edge.csv"));
  const Run run = run_plate({"modes", design, "--json", "--count", "1"});
  CHECK(run.status == 0);
  CHECK(run.err.find("warning: edge.csv:11: the point at x 75.0, y 91.6 mm") != std::string::npos);
  const json fits = json::parse(run.out).at("fits");
  REQUIRE(fits.size() == 1);
  CHECK(fits[0].at("part") == "outline");
  CHECK(fits[0].at("points") == 59);
  CHECK(fits[0].at("rms_mm").get<double>() < 0.01);
  CHECK(fits[0].at("largest_mm").get<double>() < 0.05);
  REQUIRE(fits[0].at("outliers").size() == 1);
  CHECK(fits[0].at("outliers")[0].at("line") == 11);
  CHECK(std::abs(fits[0].at("outliers")[0].at("residual_mm").get<double>()) > 4.0);
  const Run text = run_plate({"modes", design, "--count", "1"});
  CHECK(text.out.find("outline from 59 points of edge.csv: rms 0.0") != std::string::npos);
  CHECK(text.out.find("1 outlier left out") != std::string::npos);
}

TEST_CASE("a file outside the design's folder is read only if allowed")
{
  const Workshop shop;
  const Workshop other;
  const std::string edge = other.write("edge.csv", outline_points());
  const std::string design = shop.write("top.toml", design_with(edge));
  const Run refused = run_plate({"modes", design, "--count", "1"});
  CHECK(refused.status == 2);
  CHECK(refused.out.empty());
  CHECK(refused.err.find("--allow-outside") != std::string::npos);
  CHECK(run_plate({"modes", design, "--count", "1", "--allow-outside"}).status == 0);
}
