// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <string>

using nlohmann::json;
using namespace plate::test;

namespace
{

bool holds(const std::string& text, const std::string& part)
{
  return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("validate prints the promised keys")
{
  const Run run = run_plate({"validate", "--only", "constants of [0/45/-45/90]s", "--json"});
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  const json result = json::parse(run.out);
  CHECK(result.at("passed") == 4);
  CHECK(result.at("failed") == 0);
  CHECK(result.at("cases").size() == 4);
  const json& first = result.at("cases").at(0);
  CHECK(first.at("case") == "constants of [0/45/-45/90]s");
  CHECK(first.at("source") == "Jones1999");
  CHECK(first.at("quantity") == "Ex_GPa");
  // Recomputed independently from the textbook's lamina.
  CHECK(first.at("reference").get<double>() == doctest::Approx(69.675741).epsilon(1e-8));
  CHECK(first.at("computed").get<double>() == doctest::Approx(69.675741).epsilon(1e-7));
  CHECK(std::abs(first.at("difference_percent").get<double>()) < 1e-5);
  CHECK(first.at("tolerance_percent") == 1e-5);
  CHECK(first.at("pass") == true);
  CHECK(first.at("mark") == "recomputed");
}

TEST_CASE("validate takes the cases of a pattern and prints them by topic")
{
  const Run run = run_plate({"validate", "--only", "moist*", "--threads", "2"});
  CHECK(run.status == 0);
  CHECK(holds(run.out, "Formulas\n"));
  CHECK(holds(run.out, "moisture of wood in air"));
  CHECK(holds(run.out, "density of moist wood")); // the pattern may stand anywhere
  CHECK(holds(run.out, "4 cases with 7 values from 1 source: all within their tolerances"));
  CHECK_FALSE(holds(run.out, "thin square"));
  CHECK_FALSE(holds(run.out, "\x1b")); // colours on a terminal only
  const Run values = run_plate({"validate", "--only", "WoodHandbook2021", "--values"});
  CHECK(holds(values.out, "engelmann_MPa"));
  CHECK(holds(values.out, "sitka_MPa"));
}

TEST_CASE("a case beyond its tolerance is marked, and the exit status is 1")
{
  const Run run = run_plate({"validate", "--only", "measured spruce plate 2R"});
  CHECK(run.status == 1);
  CHECK(holds(run.out, "FAIL"));
  CHECK(holds(run.out, "1 value beyond its tolerance"));
}

TEST_CASE("validate lists its cases without computing them")
{
  const Run run = run_plate({"validate", "--list"});
  CHECK(run.status == 0);
  CHECK(holds(run.out, "thin square SSSS"));
  CHECK(std::count(run.out.begin(), run.out.end(), '\n') > 80);
  CHECK(run.seconds < 1.0);
  const json list = json::parse(run_plate({"validate", "--list", "--only", "NAFEMS", "--json"}).out);
  for (const json& entry : list.at("cases"))
    CHECK(entry.at("source").get<std::string>().find("NAFEMS") == 0);
}

TEST_CASE("validate on wrong options says so")
{
  const Run unknown = run_plate({"validate", "--only", "thin squere"});
  CHECK(unknown.status == 2);
  CHECK(unknown.out.empty());
  CHECK(holds(unknown.err,
              "--only thin squere: no case has that in its name, topic or source; nearest name: thin square"));
  CHECK(run_plate({"validate", "--only", ""}).status == 2);
  CHECK(run_plate({"validate", "design.toml"}).status == 2);
  CHECK(holds(run_plate({"validate", "--olny", "x"}).err, "nearest: --only"));
}
