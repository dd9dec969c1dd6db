// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"
#include "wrong/wrong_files.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include <sys/stat.h>
#include <unistd.h>

using namespace plate::test;

namespace
{

/// One clear answer, at once, and nothing written.
void check_refused(const Workshop& shop, const Run& run, const std::vector<std::string>& says,
                   const std::set<std::string>& files)
{
  CAPTURE(run.err.substr(0, 500));
  CHECK(run.status == 2);
  CHECK(run.out.empty());
  CHECK(run.seconds < AT_ONCE);
  CHECK(std::count(run.err.begin(), run.err.end(), '\n') == 1);
  CHECK(run.err.size() < 1000);
  for (const std::string& part : says)
  {
    CAPTURE(part);
    CHECK(run.err.find(part) != std::string::npos);
  }
  CHECK(shop.content() == files);
}

void check_refused(const std::vector<WrongFile>& table, const std::string& command = "modes")
{
  for (const WrongFile& wrong : table)
  {
    CAPTURE(wrong.name);
    const Workshop shop;
    std::vector<std::string> arguments = {command, shop.write("plate.toml", wrong.text), "--out", shop.path("out")};
    arguments.insert(arguments.end(), wrong.options.begin(), wrong.options.end());
    check_refused(shop, run_plate(arguments), wrong.says, {"plate.toml"});
  }
}

} // namespace

TEST_CASE("the plates that wrong files are made from are good")
{
  const Workshop shop;
  for (const std::string& text :
       {solid_plate(), "\xEF\xBB\xBF" + solid_plate(), "title = \"F\xC3\xBCr Anna\"\n" + solid_plate(),
        laminate_plate() + "solid = \"spruce\"\n[thickness]\nvalue = 2\n[mesh]\nsize = 30\n"})
    CHECK(run_plate({"modes", shop.write("plate.toml", text), "--json"}).status == 0);
}

TEST_CASE("unknown and missing keys and wrong types are refused")
{
  check_refused(wrong_keys());
}

TEST_CASE("numbers out of range and impossible materials are refused")
{
  check_refused(wrong_numbers());
}

TEST_CASE("holes and bars that do not fit are refused")
{
  check_refused(wrong_shapes());
}

TEST_CASE("contradictions and wrong codes of a layup are refused")
{
  check_refused(wrong_layups());
}

TEST_CASE("files that are no text, or too deep, or too long are refused")
{
  check_refused(wrong_bytes());
}

TEST_CASE("wrong overrides are refused")
{
  check_refused(wrong_overrides());
}

TEST_CASE("wrong lists of measured modes are refused")
{
  for (const WrongFile& wrong : wrong_measured())
  {
    CAPTURE(wrong.name);
    const Workshop shop;
    const Run run = run_plate({"compare", shop.write("plate.toml", solid_plate()), "--measured",
                               shop.write("list.csv", wrong.text), "--out", shop.path("out")});
    check_refused(shop, run, wrong.says, {"plate.toml", "list.csv"});
  }
}

TEST_CASE("wrong keys and modes of a sensitivity are refused")
{
  check_refused(wrong_sensitivity(), "sensitivity");
  const Workshop shop; // maps without a place for them
  const Run run = run_plate({"sensitivity", shop.write("plate.toml", solid_plate()), "--map", "M5"});
  check_refused(shop, run, {"--map", "--out DIR"}, {"plate.toml"});
}

TEST_CASE("what is no readable file is refused")
{
  const Workshop shop;
  const auto refused = [&](const std::string& path, const char* what)
  {
    const Run run = run_plate({"modes", path});
    CAPTURE(run.err);
    CHECK(run.status == 2);
    CHECK(run.out.empty());
    CHECK(run.err.find(path) != std::string::npos);
    CHECK(run.err.find(what) != std::string::npos);
  };
  refused(shop.path("none.toml"), "does it exist");
  refused(shop.path(""), "is a folder");
  refused("/dev/zero", "is longer than");
  REQUIRE(::symlink("loop.toml", shop.path("loop.toml").c_str()) == 0);
  refused(shop.path("loop.toml"), "cannot be read");
  const std::string locked = shop.write("locked.toml", solid_plate());
  REQUIRE(::chmod(locked.c_str(), 0) == 0);
  if (::access(locked.c_str(), R_OK) != 0) // root reads everything
    refused(locked, "cannot be read");
}

TEST_CASE("at least sixty wrong files are tried")
{
  std::size_t count = 0;
  for (const auto& table :
       {wrong_keys(), wrong_numbers(), wrong_shapes(), wrong_layups(), wrong_bytes(), wrong_overrides()})
    count += table.size();
  CHECK(count >= 60);
}

TEST_CASE("bodies that cannot be loaded are refused")
{
  for (const WrongFile& wrong : wrong_body_loads())
  {
    CAPTURE(wrong.name);
    const Workshop shop;
    const std::string plate = shop.write("plate.toml", solid_plate());
    std::vector<std::string> arguments = {"load", shop.write("body.toml", wrong.text), "--out", shop.path("out")};
    for (const std::string& option : wrong.options)
      arguments.push_back(option == "plate.toml" ? plate : option);
    check_refused(shop, run_plate(arguments), wrong.says, {"body.toml", "plate.toml"});
  }
}

TEST_CASE("match problems that cannot be are refused")
{
  for (const WrongFile& wrong : wrong_matches())
  {
    CAPTURE(wrong.name);
    const Workshop shop;
    static_cast<void>(shop.write("plate.toml", solid_plate()));
    check_refused(shop, run_plate({"match", shop.write("match.toml", wrong.text), "--out", shop.path("out")}),
                  wrong.says, {"match.toml", "plate.toml"});
  }
}

TEST_CASE("bodies that cannot be are refused")
{
  for (const WrongFile& wrong : wrong_bodies())
  {
    CAPTURE(wrong.name);
    const Workshop shop;
    std::set<std::string> files = {"body.toml"};
    for (const auto& [name, text] : wrong_body_plates())
    {
      static_cast<void>(shop.write(name, text));
      files.insert(name);
    }
    std::vector<std::string> arguments = {"body", shop.write("body.toml", wrong.text), "--out", shop.path("out")};
    for (const std::string& option : wrong.options)
      arguments.push_back(option.ends_with(".toml") ? shop.path(option) : option);
    check_refused(shop, run_plate(arguments), wrong.says, files);
  }
}

TEST_CASE("the body that wrong ones are made from is good, and no plate to the commands that take plates")
{
  const Workshop shop;
  for (const auto& [name, text] : wrong_body_plates())
    static_cast<void>(shop.write(name, text));
  const std::string body = shop.write("body.toml", body_start());
  const std::set<std::string> files = shop.content();
  CHECK(run_plate({"body", body, "--set", "mesh.size=40", "--count", "4", "--json"}).status == 0);
  for (const std::vector<std::string>& command :
       std::vector<std::vector<std::string>>{{"modes", body}, {"laminate", body}})
  {
    CAPTURE(command.front());
    check_refused(shop, run_plate(command), {"body.toml:1: body", "read as the file of a plate"}, files);
  }
}
