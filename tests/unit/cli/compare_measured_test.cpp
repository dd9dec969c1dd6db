// SPDX-License-Identifier: MPL-2.0
#include "check_refused.h"
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <functional>
#include <numbers>
#include <sstream>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

namespace
{

/// The quick plate with its modes, which stand for those of a real one.
struct MeasuredPlate
{
  Workshop shop;
  std::string file = shop.write("flat.toml", quick_design());
  json modes = json::parse(run_plate({"modes", file, "--json", "--count", "8"}).out).at("modes");

  [[nodiscard]] double hz(std::size_t mode) const { return modes.at(mode - 1).at("frequency_hz"); }

  [[nodiscard]] json compare(const std::string& list) const
  {
    const Run run = run_plate({"compare", file, "--measured", list, "--json"});
    CAPTURE(run.err);
    REQUIRE(run.status == 0);
    return json::parse(run.out).at("designs").at(0);
  }
};

/// Points of a grid of 5 x 4 over the plate with a shape in coordinates from -1 to 1.
std::string points_of(const std::function<double(double u, double v)>& shape)
{
  std::ostringstream out;
  out << "points = [";
  for (int i = 0; i < 5; ++i)
    for (int j = 0; j < 4; ++j)
    {
      const double u = -0.96 + 0.48 * i;
      const double v = -0.96 + 0.64 * j;
      out << "[" << 175.0 * u << ", " << 100.0 * v << ", " << shape(u, v) << "], ";
    }
  return out.str() + "]\n";
}

} // namespace

TEST_CASE("a list without shapes is paired by trade name, the rest in order with gaps")
{
  const MeasuredPlate plate;
  // Mode 4 was not heard; all are 5 % sharp.
  std::ostringstream list;
  list.precision(15);
  list << "mode,name,frequency_hz,loss_percent\n";
  for (const std::size_t mode : {1U, 2U, 3U, 5U})
    list << mode << ',' << plate.modes.at(mode - 1).at("name").get<std::string>() << ',' << 1.05 * plate.hz(mode)
         << (mode == 3 ? ",\n" : ",1.5\n");
  const json design = plate.compare(plate.shop.write("list.csv", list.str()));
  REQUIRE(design.at("pairs").size() == 4);
  for (const json& pair : design.at("pairs"))
  {
    CHECK(pair.at("mode") == pair.at("reference_mode"));
    CHECK(pair.at("cents").get<double>() == doctest::Approx(-1200.0 * std::log2(1.05)).epsilon(1e-6));
    CHECK(pair.at("mac").is_null());
    if (pair.at("mode") == 3)
      CHECK(pair.at("reference_loss_percent").is_null());
    else
      CHECK(pair.at("reference_loss_percent") == 1.5);
  }
}

TEST_CASE("names go before order: a list that calls the first mode M2 means M2")
{
  const MeasuredPlate plate;
  const auto m2 =
      std::find_if(plate.modes.begin(), plate.modes.end(), [](const json& m) { return m.at("name") == "M2"; });
  REQUIRE(m2 != plate.modes.end());
  const json design = plate.compare(plate.shop.write("list.csv", "name,frequency_hz\nM2,90\nM7,140\n"));
  CHECK(design.at("pairs").at(0).at("mode") == m2->at("number"));
  // A trade name that the design has not is paired with nothing, whatever its place.
  const std::string square = plate.shop.write("short.csv", "name,frequency_hz\nM5,40\n");
  const json none =
      json::parse(run_plate({"compare", plate.file, "--measured", square, "--count", "1", "--json", "--set",
                             "outline.length=2000", "--set", "outline.width=100", "--set", "mesh.size=50"})
                      .out)
          .at("designs")
          .at(0);
  CHECK(none.at("pairs").empty());
  CHECK(none.at("unpaired_reference_modes") == json({1}));
}

TEST_CASE("a list with shapes is paired by shape, whatever its order, names and signs")
{
  const MeasuredPlate plate;
  // Twist u v, and bending across v^2 less its mean, of a plate that is much softer across the grain.
  const std::string list = plate.shop.write(
      "tapped.toml", "title = \"Tapped\"\n[[mode]]\nname = \"second\"\nfrequency_hz = 90\n" +
                         points_of([](double u, double v) { return -3.0 * u * v; }) + "[[mode]]\nname = \"first\"\n" +
                         "frequency_hz = 60\n" + points_of([](double, double v) { return v * v - 0.3; }));
  const json design = plate.compare(list);
  const auto mode_named = [&](const std::string& name)
  {
    return std::find_if(plate.modes.begin(), plate.modes.end(), [&](const json& m) { return m.at("name") == name; })
        ->at("number");
  };
  REQUIRE(design.at("pairs").size() == 2);
  CHECK(design.at("pairs").at(0).at("reference_name") == "first");
  CHECK(design.at("pairs").at(0).at("mode") == mode_named("M2"));
  CHECK(design.at("pairs").at(1).at("mode") == mode_named("M1"));
  for (const json& pair : design.at("pairs"))
    CHECK(pair.at("mac").get<double>() > 0.8);
  CHECK(design.at("left_out_percent") == 0.0);
}

TEST_CASE("measured modes have no plate to be drawn")
{
  const MeasuredPlate plate;
  const std::string list = plate.shop.write("list.csv", "name,frequency_hz\nM1,60\n");
  const Run run = run_plate({"compare", plate.file, "--measured", list, "--out", plate.shop.path("out")});
  CHECK(run.status == 0);
  CHECK(run.out.find("paired by name") != std::string::npos);
  CHECK(plate.shop.content("out") == std::set<std::string>{"compare.csv", "compare.json", "polar.png", "polar.svg"});
}

TEST_CASE("frequencies in rad/s are recognised beside those of the design")
{
  const MeasuredPlate plate;
  std::ostringstream list;
  list << "mode,frequency_hz\n";
  for (std::size_t mode = 1; mode <= 5; ++mode)
    list << mode << ',' << 1.04 * 2.0 * std::numbers::pi * plate.hz(mode) << '\n';
  check_refused(run_plate({"compare", plate.file, "--measured", plate.shop.write("list.csv", list.str())}),
                "as if they were in rad/s; frequency_hz must be in Hz");
}

TEST_CASE("slips with measured modes and compare are answered")
{
  const MeasuredPlate plate;
  const std::string away = "[[mode]]\nfrequency_hz = 60\npoints = [[900,0,1],[901,0,1],[902,0,1],[903,0,1],[904,0,1],"
                           "[905,0,1]]\n";
  check_refused(run_plate({"compare", plate.file, "--measured", plate.shop.write("away.toml", away)}),
                "mode 1: 0 of 6 points lie on Flat spruce; at least 6 must; x and y are in mm from the middle");
  check_refused(run_plate({"compare", plate.file, "--measured", plate.shop.path("none.csv")}),
                "none.csv: cannot be read");
  check_refused(run_plate({"compare", plate.file, "--measured", ""}), "--measured: the name of a file is missing");
  check_refused(run_plate({"compare", plate.file}), "a design to compare with the reference is missing");
  check_refused(run_plate({"compare"}), "a design file is missing");
  check_refused(run_plate({"compare", plate.file, plate.shop.path("none.toml")}), "none.toml");
  check_refused(run_plate({"compare", plate.file, plate.file, "--set", "arching.hieght=3"}), "nearest: arching.height");
  check_refused(run_plate({"compare", plate.file, plate.file, "--beside", plate.file}), "unknown option --beside");
  CHECK(plate.shop.content() == std::set<std::string>{"away.toml", "flat.toml"});
}
