// SPDX-License-Identifier: MPL-2.0
#include "check_refused.h"
#include "quick_body.h"
#include "run_json.h"

#include <set>
#include <string>
#include <vector>

using nlohmann::json;
using namespace plate::test;

namespace
{

/// A flat box of built-in wood: few keys.
std::string write_plain_box(const Workshop& shop, const std::string& more = "")
{
  const std::string plate = "[outline]\nkind = \"rectangle\"\nlength = 300\nwidth = 180\n[thickness]\nvalue = 2.5\n"
                            "[layup]\nsolid = \"spruce\"\n[mesh]\nsize = 30\n";
  static_cast<void>(shop.write("top.toml", plate + "[[soundhole]]\nkind = \"slot\"\ncentre = [0, 50]\nlength = 60\n"
                                                   "width = 8\n"));
  static_cast<void>(shop.write("back.toml", plate));
  return shop.write("box.toml",
                    quick_box() + "[linings]\nheight = 0\n[blocks]\nend = [0, 0]\ncorner = [0, 0]\n" + more);
}

std::set<std::string> keys_of(const json& result)
{
  std::set<std::string> keys;
  for (const json& key : result.at("keys"))
    keys.insert(key.at("key").get<std::string>());
  return keys;
}

double slope(const json& mode, const std::string& key)
{
  return mode.at("derivatives").at(key).at("hz_per_unit").get<double>();
}

} // namespace

TEST_CASE("sensitivity of a body by the keys of its three files")
{
  const Workshop shop;
  const std::string file = write_plain_box(shop, "[bridge]\nmass = 2\n[strings]\nangle = 20\n");
  const json result = run_json({"sensitivity", file, "--count", "3", "--out", shop.path("out")});
  CHECK(result.at("title") == "Box");
  CHECK(result.at("complete") == true);
  CHECK(result.at("in_air") == true);
  // No measures of the mesh, no loads, no outline of the back by itself, no linings that are not there.
  CHECK(keys_of(result) == std::set<std::string>{"ribs.height", "ribs.thickness", "ribs.overhang", "bridge.mass",
                                                 "top.outline.length", "top.outline.width", "top.thickness.value",
                                                 "top.soundhole.1.centre.1", "top.soundhole.1.centre.2",
                                                 "top.soundhole.1.length", "top.soundhole.1.width",
                                                 "back.thickness.value"});
  CHECK(result.at("modes").at(0).at("name") == "A0");
  CHECK(result.at("modes").at(0).at("derivatives").at("ribs.height").at("unit") == "mm");
  // Thicker walls yield less to the pressure, a longer slot lets more air through: A0 rises by either.
  for (const char* key : {"top.thickness.value", "back.thickness.value", "top.soundhole.1.length"})
    CHECK(slope(result.at("modes").at(0), key) > 0.0);
  for (const json& mode : result.at("modes"))
    CHECK(slope(mode, "bridge.mass") <= 0.0);
  std::set<std::string> files = {"sensitivity.csv", "sensitivity.json"};
  for (const std::string plate : {"top", "back"})
  {
    files.insert("sensitivity_" + plate + ".vtu");
    files.insert("thickness_slopes_01_" + plate + ".png");
    files.insert("thickness_slopes_01_" + plate + ".svg");
  }
  const std::set<std::string> content = shop.content("out");
  for (const std::string& name : files)
  {
    CAPTURE(name);
    CHECK(content.count(name) == 1);
  }
}

TEST_CASE("the air of a heavy box rises with the root of its temperature, on any number of threads")
{
  const Workshop shop;
  const std::string file = write_plain_box(shop);
  std::vector<std::string> arguments = {"sensitivity", file, "--count", "1", "--key", "air.temperature", "--json"};
  for (const char* key : {"top.thickness.value=12", "back.thickness.value=12", "ribs.thickness=8"})
    arguments.insert(arguments.end(), {"--set", key});
  const Run run = run_plate(arguments);
  CAPTURE(run.err);
  REQUIRE(run.status == 0);
  const json mode = json::parse(run.out).at("modes").at(0);
  CHECK(mode.at("name") == "A0");
  // Speed of sound of an ideal gas: f goes with the root of the absolute temperature. The walls take a few percent.
  const double rigid = 0.5 / 293.15;
  CHECK(slope(mode, "air.temperature") / mode.at("frequency_hz").get<double>() == doctest::Approx(rigid).epsilon(0.05));
  arguments.insert(arguments.end(), {"--threads", "2"});
  CHECK(run_plate(arguments).out == run.out);
}

TEST_CASE("slips with sensitivities of bodies are answered")
{
  const Workshop shop;
  const std::string file = write_plain_box(shop);
  const auto asked = [&](const std::string& key) { return run_plate({"sensitivity", file, "--key", key}); };
  check_refused(asked("back.outline.length"), "both plates of a body have one outline; take top.outline");
  check_refused(asked("linings.height"), "box.toml:12: linings.height = 0: there is none of these");
  check_refused(asked("top.mesh.size"), "is a measure of the computation");
  check_refused(asked("top.thickness.vlaue"), "nearest: thickness.value");
  check_refused(run_plate({"sensitivity", file, "--key", "ribs.height", "--map", "B9", "--count", "1", "--out",
                           shop.path("out")}),
                "--map B9: no such mode");
}
