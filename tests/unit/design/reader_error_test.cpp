// SPDX-License-Identifier: MPL-2.0
#include "sample_text.h"

using namespace plate;
using namespace plate::test;

TEST_CASE("an unknown key names file, line, key, the nearest key and the keys of its table")
{
  check_message(
      error_of(small_plate + "[arching]\nkind = \"biparabolic\"\nheigth = 15\n"),
      "top.toml:11: arching.heigth = 15: unknown key; nearest: arching.height; keys of [arching]: kind, height", {});
  check_message(error_of("[outlin]\nlength = 3\n" + small_plate), "top.toml:1: outlin", {"unknown key"});
  check_message(error_of("lenght = 3\n" + small_plate), "top.toml:1: lenght = 3:", {"unknown key", "outline.length"});
  check_message(error_of(bare_plate + "[layup]\nplies = [{ material = \"flax_ud\", tickness = 1 }]\n"),
                "top.toml:6: layup.plies.1.tickness = 1:", {"layup.plies.1.thickness"});
  check_message(error_of(small_plate + "\"so lid\" = 1\n"), "top.toml:9: layup.\"so lid\"", {"letters, digits"});
}

TEST_CASE("the first fault in the file is the one reported")
{
  const std::string text = error_of("[outline]\nkind = 1\n[arching]\nkinds = 1\n");
  check_message(text, "top.toml:2: outline.kind = 1", {});
}

TEST_CASE("a wrong type is reported with the value and what is allowed")
{
  check_message(error_of(small_plate + "[arching]\nkind = \"flat\"\nheight = \"high\"\n"),
                "top.toml:11: arching.height = \"high\": must be a number in mm, at least 0 and at most 300", {});
  check_message(error_of("title = 5\n" + small_plate), "top.toml:1: title = 5:", {"text"});
  check_message(error_of("title = 2020-01-01\n" + small_plate), "top.toml:1:", {"dates"});
  check_message(error_of("outline = 5\n"), "top.toml:1: outline = 5:", {"table", "lower_bout"});
  check_message(error_of(small_plate + "[soundhole]\nkind = \"f\"\n"), "top.toml:9: soundhole", {"[[soundhole]]"});
  check_message(error_of(small_plate + "[[soundhole]]\nkind = \"slot\"\ncentre = [1]\nlength = 20\nwidth = 4\n"),
                "top.toml:11: soundhole.1.centre = [1]:", {"list of 2 numbers"});
  check_message(error_of(small_plate + "[[soundhole]]\nkind = \"f\"\nmirror = \"no\"\n"),
                "top.toml:11: soundhole.1.mirror", {"true or false"});
}

TEST_CASE("a word out of a list names the nearest")
{
  check_message(error_of(small_plate + "[arching]\nkind = \"cyclod\"\n"),
                "top.toml:10: arching.kind = \"cyclod\":", {"\"flat\"", "\"biparabolic\"", "nearest: \"cycloid\""});
}

TEST_CASE("numbers out of range, infinite or not a number are refused")
{
  check_message(error_of(small_plate + "scale = 0\n"),
                "top.toml:9: layup.scale = 0:", {"at least 0.01", "at most 100"});
  check_message(error_of(small_plate + "scale = inf\n"), "top.toml:9: layup.scale = inf:", {"number"});
  check_message(error_of(small_plate + "scale = nan\n"), "top.toml:9: layup.scale = nan:", {"number"});
  check_message(error_of(small_plate + "angle = 361\n"), "top.toml:9: layup.angle = 361:", {"degrees", "360"});
}

TEST_CASE("missing keys and tables are named with what they must be")
{
  check_message(error_of(""), "top.toml: outline:", {"missing"});
  check_message(error_of("[outline]\nkind = \"rectangle\"\nwidth = 200\n"),
                "top.toml:1: outline.length:", {"missing", "number in mm"});
  check_message(error_of("[outline]\nlength = 200\n"), "top.toml:1: outline.kind:", {"missing", "\"bouts\""});
}

TEST_CASE("a key of another kind is a contradiction")
{
  check_message(error_of("[outline]\nkind = \"ellipse\"\nlength = 300\nwidth = 200\nlower_bout = 236\n"),
                "top.toml:5: outline.lower_bout = 236:", {"ellipse", "width"});
  check_message(error_of(small_plate + "[arching]\nkind = \"flat\"\nheight = 12\n"),
                "top.toml:11: arching.height = 12:", {"flat"});
  check_message(
      error_of(small_plate + "[support]\nedge = \"free\"\nedges = [\"free\", \"free\", \"free\", \"free\"]\n"),
      "top.toml:11: support.edges", {"contradicts support.edge"});
}

TEST_CASE("an unknown material names the nearest one declared or built in")
{
  check_message(error_of(bare_plate + "[thickness]\nvalue = 2\n[layup]\nsolid = \"spurce\"\n"),
                "top.toml:8: layup.solid = \"spurce\":", {"nearest: \"spruce\"", "maple"});
}

TEST_CASE("an impossible material is refused")
{
  // Positive definiteness asks for nu12^2 < E1/E2 [Jones1999] sec. 2.4.
  check_message(error_of(small_plate + "[material.spruce]\nnu12 = 4\n"),
                "top.toml:9: material.spruce:", {"impossible"});
  check_message(error_of(small_plate + "[material.spruce]\nE1 = -3\n"),
                "top.toml:10: material.spruce.E1 = -3:", {"at least 0.0001"});
  check_message(error_of(small_plate + "[material.oak]\nE1 = 10\n"), "top.toml:9: material.oak.E2:", {"missing"});
}

TEST_CASE("constants through the plate are given together, and carved wood needs them")
{
  const std::string oak = "[material.oak]\nE1 = 12\nE2 = 1\nG12 = 0.8\nnu12 = 0.3\ndensity = 700\n";
  check_message(error_of(small_plate + oak + "E3 = 0.5\n"), "top.toml:15: material.oak.E3 = 0.5:", {"together", "G23"});
  check_message(error_of(bare_plate + "[thickness]\nvalue = 2\n[layup]\nsolid = \"oak\"\n" + oak),
                "top.toml:8: layup.solid = \"oak\":", {"carved", "G23"});
}

TEST_CASE("parts that do not fit the plate are reported where they are written")
{
  check_message(error_of(small_plate + "[[soundhole]]\nkind = \"slot\"\ncentre = [0, 40]\nlength = 40\nwidth = 6\n"
                                       "[[soundhole]]\nkind = \"slot\"\ncentre = [0, 120]\nlength = 40\nwidth = 6\n"),
                "top.toml:14: soundhole.2:", {"outline"});
  check_message(error_of(small_plate + "[setup]\nstop = 400\n"), "top.toml:10: setup.stop = 400:", {"outside", "350"});
  const std::string bar = "[bar]\nmaterial = \"spruce\"\nwidth = 6\nheight = 12\noffset = 20\n";
  check_message(error_of(small_plate + bar + "length = 360\n"), "top.toml:9: bar:", {"mm"});
  check_message(error_of(small_plate + bar + "length = 100\ncentre = 90\n"),
                "top.toml:14: bar.length = 100:", {"bridge line"});
  check_message(error_of(small_plate + bar + "length = 250\nend_height = 13\n"),
                "top.toml:15: bar.end_height = 13:", {"higher"});
  check_message(error_of(small_plate + "[mesh]\nsize = 150\n"), "top.toml:10: mesh.size = 150:", {"at most 100"});
}

TEST_CASE("text that is no TOML is reported with its line")
{
  check_message(error_of("[outline\n"), "top.toml:1: not valid TOML", {});
  check_message(error_of("a = 1\na = 2\n"), "top.toml:2: not valid TOML", {});
  check_message(error_of(std::string("title = \"x\"\n[[\0\0", 16)), "top.toml:2:", {"NUL"});
  check_message(error_of("title = \"\xff\xfe\"\n"), "top.toml:1: not valid TOML", {});
  check_message(error_of("title = \"x\"\n#" + std::string(2000000, 'x')), "top.toml:", {"bytes"});
  check_message(error_of("title = " + std::string(100000, '[')), "top.toml:", {});
}
