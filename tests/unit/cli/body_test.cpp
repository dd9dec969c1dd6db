// SPDX-License-Identifier: MPL-2.0
#include "check_refused.h"
#include "quick_body.h"
#include "relative.h"
#include "run_json.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <set>
#include <sstream>

using nlohmann::json;
using namespace plate::test;

namespace
{

json body_of(const std::string& file, std::vector<std::string> more = {})
{
  std::vector<std::string> arguments = {"body", file};
  arguments.insert(arguments.end(), more.begin(), more.end());
  return run_json(arguments);
}

/// Numbers of a CSV file without its head.
std::vector<std::vector<double>> numbers_of(const std::string& text)
{
  std::istringstream lines(text.substr(text.find('\n') + 1));
  std::vector<std::vector<double>> rows;
  for (std::string line; std::getline(lines, line);)
  {
    std::istringstream cells(line);
    std::vector<double>& row = rows.emplace_back();
    for (std::string cell; std::getline(cells, cell, ',');)
      row.push_back(std::stod(cell));
  }
  return rows;
}

} // namespace

TEST_CASE("body prints JSON with the promised keys")
{
  const Workshop shop;
  const json result = body_of(write_box(shop), {"--count", "10"});
  CHECK(result.at("title") == "Box");
  // Within the middle of ribs 1 mm thick, 2.5 mm inside a rim of 350 x 200 mm, by hand.
  CHECK(result.at("air_volume_l").get<double>() == doctest::Approx(3.44 * 1.94 * 0.4).epsilon(1e-6));
  CHECK(result.at("hole_conductance_mm").get<double>() > 30.0);
  REQUIRE(result.at("modes").size() == 10);
  double last = 0.0;
  std::set<std::string> names;
  for (const json& mode : result.at("modes"))
  {
    CHECK(mode.at("frequency_hz").get<double>() >= last);
    last = mode.at("frequency_hz");
    double sum = 0.0;
    for (const auto& [part, share] : mode.at("energy_shares").items())
      sum += share.get<double>();
    CHECK(sum == doctest::Approx(1.0).epsilon(1e-7));
    CHECK(mode.at("air_share") == mode.at("energy_shares").at("air"));
    CHECK(mode.at("loss_percent").get<double>() > 0.0);
    if (const std::string name = mode.at("name"); !name.empty())
    {
      CHECK(names.insert(name).second); // each once
      CHECK(mode.at("certainty").get<double>() >= 0.0);
      CHECK(mode.at("certainty").get<double>() <= 1.0);
    }
    else
      CHECK_FALSE(mode.contains("certainty"));
  }
  CHECK(names.count("A0") == 1);
  CHECK_FALSE(result.contains("seconds"));
}

TEST_CASE("a heavy box is a mass to the bridge, and its air between it rings as between rigid walls")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  std::vector<std::string> options = {"--out", shop.path("out")};
  for (const char* key :
       {"top.thickness.value=12", "back.thickness.value=12", "ribs.thickness=8", "top.material.spruce.E1=400",
        "top.material.spruce.E2=400", "back.material.spruce.E1=400", "back.material.spruce.E2=400"})
    options.insert(options.end(), {"--set", key});
  const json result = body_of(file, options);
  const double a0 = result.at("modes").at(0).at("frequency_hz");
  CHECK(result.at("modes").at(0).at("name") == "A0");
  CHECK(a0 < result.at("rigid_walls_hz").at(0).get<double>());
  CHECK(a0 == doctest::Approx(result.at("rigid_walls_hz").at(0).get<double>()).epsilon(0.03));
  const std::vector<double> first = numbers_of(bytes_of(shop.path("out/mobility.csv"))).front();
  REQUIRE(first.size() == 7);
  CHECK(first[0] == doctest::Approx(50.0));
  // Y = 1 / (i w m), by hand: the force of both feet passes through the middle of the box.
  const double expected = 1.0 / (2.0 * std::numbers::pi * 50.0 * 1e-3 * result.at("mass_g").get<double>());
  CHECK(-first[3] == relative(expected, 0.05)); // elastic walls add a little
}

TEST_CASE("body writes its files, the same on every run and with any number of threads")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  for (const char* threads : {"1", "2"})
    REQUIRE(run_plate({"body", file, "--threads", threads, "--out", shop.path(threads)}).status == 0);
  for (const char* name :
       {"body.json", "body.csv", "mobility.csv", "radiation.csv", "modes.png", "modes.svg", "mobility.png",
        "mobility.svg", "radiation.png", "radiation.svg", "top.vtu", "back.vtu", "ribs.vtu", "air.vtu"})
  {
    const std::string first = bytes_of(shop.path(std::string("1/") + name));
    CAPTURE(name);
    CHECK(first.size() > 100);
    CHECK(first == bytes_of(shop.path(std::string("2/") + name)));
  }
  const std::vector<std::vector<double>> bands = numbers_of(bytes_of(shop.path("1/radiation.csv")));
  REQUIRE(bands.size() == 11); // 100 to 1000 Hz, [IEC61260]
  CHECK(bands.front().at(0) == doctest::Approx(100.0));
  CHECK(bands.back().at(0) == doctest::Approx(1000.0));
  for (const std::vector<double>& row : numbers_of(bytes_of(shop.path("1/mobility.csv"))))
    for (const std::size_t at : {std::size_t{1}, std::size_t{4}}) // 20 log10 |Y|, by hand
      CHECK(row[at] == doctest::Approx(20.0 * std::log10(std::abs(std::complex(row[at + 1], row[at + 2])))));
}

TEST_CASE("keys of the body and of its plates can be set")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  const json plain = body_of(file);
  const json thick = body_of(file, {"--set", "top.thickness.value=3.5"});
  // 1 mm more over the top less its slots, by hand: at 400 kg/m3, the ends of the slots round; and ribs 1 mm thick of
  // 705.6 kg/m3 (built-in maple) on their middle line, which reach to the mid-surface of the top, half a millimetre
  // higher.
  const double slots = 2.0 * (64.0 * 6.0 + std::numbers::pi * 9.0);
  const double higher = 2.0 * (344.0 + 194.0) * 0.5;
  CHECK(thick.at("mass_g").get<double>() - plain.at("mass_g").get<double>() ==
        doctest::Approx(0.4e-3 * (350.0 * 200.0 - slots) + 0.7056e-3 * higher).epsilon(1e-3));
  const json high = body_of(file, {"--set", "ribs.height=50"});
  CHECK(high.at("air_volume_l").get<double>() == doctest::Approx(3.44 * 1.94 * 0.5).epsilon(1e-6));
  CHECK(high.at("rigid_walls_hz").at(0).get<double>() < plain.at("rigid_walls_hz").at(0).get<double>());
}

TEST_CASE("a body without holes has no A0")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  static_cast<void>(shop.write("top.toml", quick_design()));
  const json result = body_of(file);
  CHECK(result.at("hole_conductance_mm") == 0.0);
  for (const json& mode : result.at("modes"))
    CHECK(mode.at("name") != "A0");
}

TEST_CASE("a body beside a reference is paired by shape; overrides act on the body alone")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  const json same = body_of(file, {"--reference", file, "--count", "8"});
  CHECK(same.at("reference").at("modes") == same.at("modes"));
  REQUIRE(same.at("beside_reference").at("pairs").size() == 8);
  for (const json& pair : same.at("beside_reference").at("pairs"))
  {
    CHECK(pair.at("mode") == pair.at("reference_mode"));
    CHECK(pair.at("mac").get<double>() == doctest::Approx(1.0));
    CHECK(pair.at("cents") == 0.0);
  }
  for (const json& band : same.at("beside_reference").at("bands"))
    CHECK(band.at("rocking_db") == band.at("reference_rocking_db"));

  const Run run = run_plate({"body", file, "--reference", file, "--count", "8", "--out", shop.path("out"), "--set",
                             "top.layup.solid=\"carbon_ud\"", "--set", "back.thickness.value=4"});
  REQUIRE(run.status == 0);
  std::istringstream lines(run.out);
  for (std::string line; std::getline(lines, line);)
  {
    CAPTURE(line);
    CHECK(line.size() <= 120); // fits a window
  }
  const json other = json::parse(bytes_of(shop.path("out/body.json")));
  CHECK(other.at("reference") == same.at("reference"));
  CHECK(other.at("mass_g").get<double>() > same.at("mass_g").get<double>());
  for (const json& pair : other.at("beside_reference").at("pairs"))
  {
    const double from = pair.at("reference_hz");
    const double to = pair.at("frequency_hz");
    CHECK(from ==
          other.at("reference").at("modes").at(pair.at("reference_mode").get<std::size_t>() - 1).at("frequency_hz"));
    CHECK(pair.at("cents").get<double>() == doctest::Approx(1200.0 * std::log2(to / from)));
    CHECK(pair.at("mac").get<double>() <= 1.0);
  }
}

TEST_CASE("files of a body beside a reference have both")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  const auto written = [&](const std::string& out, std::vector<std::string> more)
  {
    std::vector<std::string> arguments = {"body", file, "--count", "6", "--out", shop.path(out)};
    arguments.insert(arguments.end(), more.begin(), more.end());
    REQUIRE(run_plate(arguments).status == 0);
    return shop.path(out) + "/";
  };
  const std::string alone = written("alone", {});
  const std::string both = written("both", {"--set", "top.thickness.value=3.5", "--reference", file});
  for (const char* name : {"mobility.csv", "radiation.csv"})
  {
    const auto rows = numbers_of(bytes_of(both + name));
    const auto reference = numbers_of(bytes_of(alone + name));
    REQUIRE(rows.size() == reference.size());
    for (std::size_t i = 0; i < rows.size(); ++i)
    {
      const std::vector<double>& expected = reference[i];
      REQUIRE(rows[i].size() == 2 * expected.size() - 1);
      CHECK(rows[i].front() == expected.front());
      CHECK(std::equal(expected.begin() + 1, expected.end(), rows[i].end() - std::ssize(expected) + 1));
      CHECK(rows[i][1] != expected[1]); // a thicker top
    }
  }
  CHECK(bytes_of(both + "reference_body.csv") == bytes_of(alone + "body.csv"));
  CHECK(bytes_of(both + "reference_modes.png") == bytes_of(alone + "modes.png"));
  const std::string pairs = bytes_of(both + "beside_reference.csv");
  CHECK(pairs.substr(0, pairs.find('\n')) ==
        "reference_mode,reference_hz,reference_name,mode,frequency_hz,name,cents,mac");
  CHECK(std::count(pairs.begin(), pairs.end(), '\n') > 1);
  for (const char* name : {"mobility.svg", "radiation.svg"})
  {
    const std::string picture = bytes_of(both + name);
    CHECK(picture.find("both feet together, reference") != std::string::npos);
    CHECK(picture.find("reference: Box") != std::string::npos);
    CHECK(bytes_of(alone + name).find("reference") == std::string::npos);
  }
}

TEST_CASE("a sweep follows the modes of a body over a key of its plates")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  const auto sweep = [&](const std::string& key)
  {
    return run_plate({"sweep", file, "--key", key, "--from", "2.5", "--to", "3", "--steps", "2", "--count", "4",
                      "--out", shop.path("out"), "--json"});
  };
  const Run run = sweep("top.thickness.value");
  CAPTURE(run.err);
  REQUIRE(run.status == 0);
  const json result = json::parse(run.out);
  CHECK(result.at("complete") == true);
  CHECK(result.at("units") == json{"mm"});
  REQUIRE(result.at("tracks").size() == 4);
  for (std::size_t point = 0; point < 2; ++point)
  {
    const json body = body_of(file, {"--set", point == 0 ? "top.thickness.value=2.5" : "top.thickness.value=3"});
    CHECK(result.at("mass_g").at(point) == body.at("mass_g"));
    for (const json& track : result.at("tracks"))
    {
      const std::size_t mode = track.at("mode").at(point);
      REQUIRE(mode > 0);
      CHECK(track.at("likeness").at(point).get<double>() > 0.5);
      CHECK(track.at("frequency_hz").at(point).get<double>() ==
            doctest::Approx(body.at("modes").at(mode - 1).at("frequency_hz").get<double>()).epsilon(1e-5));
    }
  }
  CHECK(bytes_of(shop.path("out/sweep.png")).size() > 1000);
  check_refused(sweep("top.thickness.vlaue"), "thickness.value");
}

TEST_CASE("an interrupted body ends with 130 and leaves nothing")
{
  const Workshop shop;
  const std::string file = write_box(shop);
  const Run run = run_plate({"body", file, "--set", "mesh.size=4", "--count", "60", "--out", shop.path("out")}, 1.5);
  CHECK(run.status == 130);
  CHECK(run.out.empty());
  CHECK(shop.content() == std::set<std::string>{"back.toml", "box.toml", "top.toml"});
}
