// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

namespace
{

const std::vector<std::string> viola = {"start", "--family", "viola", "--make", "wood"};

std::vector<std::string> with(std::vector<std::string> arguments, const std::vector<std::string>& more)
{
  arguments.insert(arguments.end(), more.begin(), more.end());
  return arguments;
}

void check_refused(const Run& run, const std::string& text)
{
  CAPTURE(run.err);
  CHECK(run.status == 2);
  CHECK(run.out.empty());
  CHECK(run.err.find(text) != std::string::npos);
}

} // namespace

TEST_CASE("start gives the same design on standard output, in a file, in a folder and in JSON")
{
  const Workshop shop;
  const Run plain = run_plate(viola);
  CHECK(plain.status == 0);
  CHECK(plain.err.empty());
  CHECK(plain.out.find("length = 410.0") != std::string::npos);
  CHECK(plain.out.find("common practice") != std::string::npos);

  CHECK(run_plate(with(viola, {shop.path("mine.toml")})).status == 0);
  CHECK(bytes_of(shop.path("mine.toml")) == plain.out);
  CHECK(run_plate(with(viola, {"--out", shop.path("a/b")})).status == 0);
  CHECK(bytes_of(shop.path("a/b/viola_wood_top.toml")) == plain.out);
  CHECK(shop.content("a/b") == std::set<std::string>{"design.schema.json", "viola_wood_top.toml"});
  CHECK(shop.content() == std::set<std::string>{"a", "mine.toml"});

  const json printed = json::parse(run_plate(with(viola, {"--json"})).out);
  CHECK(printed == json({{"family", "viola"}, {"make", "wood"}, {"design", plain.out}}));
}

TEST_CASE("start names what is missing or wrong")
{
  check_refused(run_plate({"start"}), "--family is missing; give one of violin, viola, cello");
  check_refused(run_plate({"start", "--family", "viola"}), "--make is missing; give one of wood, laminate");
  check_refused(run_plate({"start", "--family", "voila", "--make", "wood"}), "nearest: viola");
  check_refused(run_plate({"start", "--family", "viola", "--make", "laminat"}), "nearest: laminate");
  check_refused(run_plate(with(viola, {"--out", ""})), "--out");
  check_refused(run_plate(with(viola, {"a.toml", "--out", "b"})), "give one of them");
}

TEST_CASE("start writes over a file only when it is told to, and leaves nothing half written")
{
  const Workshop shop;
  const std::string file = shop.write("mine.toml", "my work of a week");
  check_refused(run_plate(with(viola, {file})), "is there already");
  CHECK(bytes_of(file) == "my work of a week");
  CHECK(run_plate(with(viola, {file, "--force"})).status == 0);
  CHECK(bytes_of(file) == run_plate(viola).out);

  const std::string in_folder = shop.write("viola_wood_top.toml", "my work of a year");
  check_refused(run_plate(with(viola, {"--out", shop.path("")})), "is there already");
  CHECK(bytes_of(in_folder) == "my work of a year");
  check_refused(run_plate(with(viola, {shop.path("no/such/folder.toml")})), "cannot be written");
  check_refused(run_plate(with(viola, {shop.path("")})), "is a folder");
  CHECK(shop.content() == std::set<std::string>{"mine.toml", "viola_wood_top.toml"});
}
