// SPDX-License-Identifier: MPL-2.0
#include "check_refused.h"
#include "run_plate.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace plate::test;

TEST_CASE("a slip in the command line names the nearest that would do")
{
  check_refused(run_plate({"mods", "x.toml"}), "nearest: modes");
  check_refused(run_plate({"modes", "x.toml", "--jsn"}), "unknown option --jsn; nearest: --json");
  check_refused(run_plate({"modes", "--cuont", "5", "x.toml"}), "unknown option --cuont; nearest: --count");
  check_refused(run_plate({"sweep", "x.toml", "--kye=a"}), "unknown option --kye; nearest: --key");
  check_refused(run_plate({"modes", "x.toml", "y.toml"}), "y.toml");
  check_refused(run_plate({}), "command is missing");
  check_refused(run_plate({"modes"}), "design file is missing");
  check_refused(run_plate({"--json", "modes", "x.toml"}), "options follow the command");
}

TEST_CASE("values of options are checked")
{
  check_refused(run_plate({"modes", "x.toml", "--count", "0"}), "--count");
  check_refused(run_plate({"modes", "x.toml", "--count", "many"}), "--count");
  check_refused(run_plate({"modes", "x.toml", "--threads", "-1"}), "--threads");
  check_refused(run_plate({"modes", "x.toml", "--set", "arching.height"}), "KEY=VALUE");
  check_refused(run_plate({"modes", "x.toml", "--out"}), "--out");
}

TEST_CASE("the options of a sweep belong together")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  check_refused(run_plate({"sweep", design}), "--key");
  check_refused(run_plate({"sweep", design, "--key", "layup.scale", "--from", "1"}), "--to");
  check_refused(run_plate({"sweep", design, "--key", "layup.scale", "--from", "2", "--to", "1", "--steps", "3"}),
                "less than");
  check_refused(run_plate({"sweep", design, "--key", "layup.scal", "--from", "1", "--to", "2", "--steps", "3"}),
                "nearest: layup.scale");
  check_refused(run_plate({"sweep", design, "--key", "layup.solid", "--from", "1", "--to", "2", "--steps", "3"}),
                "not a numeric key");
  check_refused(run_plate({"sweep", design, "--key", "layup.scale", "--from", "-1", "--to", "2", "--steps", "3"}),
                "layup.scale = -1");
}

TEST_CASE("a wrong design is one line with file, line and key, and leaves no file")
{
  const Workshop shop;
  const std::vector<std::pair<std::string, std::string>> faults = {
      {"[arching]\nheigth = 3\n", ":24: arching.heigth = 3: unknown key; nearest: arching.height"},
      {"[arching]\nkind = 3\n", ":24: arching.kind = 3"},
      {"[[soundhole]]\nkind = \"slot\"\ncentre = [0, 150]\nlength = 30\nwidth = 5\n", ":23: soundhole.1:"},
      {"[support]\nedge = \"glued\"\n", ":24: support.edge = \"glued\""}};
  for (const auto& [text, message] : faults)
  {
    const std::string design = shop.write("flat.toml", quick_design() + text);
    check_refused(run_plate({"modes", design, "--out", shop.path("out")}), design + message);
    CHECK(shop.content() == std::set<std::string>{"flat.toml"});
  }
  const std::string design = shop.write("flat.toml", quick_design());
  check_refused(run_plate({"modes", design, "--set", "material.spruce.nu12=5", "--out", shop.path("out")}),
                "impossible");
  check_refused(run_plate({"modes", design, "--set", "layup.solid=oak", "--out", shop.path("out")}), "no material");
  check_refused(run_plate({"modes", shop.path("other.toml")}), "cannot be read");
  CHECK(shop.content() == std::set<std::string>{"flat.toml"});
}

TEST_CASE("a folder that cannot be written is found before the work begins")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  check_refused(run_plate({"modes", design, "--out", design}), "is no folder");
  check_refused(run_plate({"modes", design, "--out", design + "/deeper"}), "is no folder");
}

TEST_CASE("help and version go to standard output and end well")
{
  for (const std::vector<std::string>& arguments :
       {std::vector<std::string>{"--help"}, {"modes", "--help"}, {"sweep", "--help"}})
  {
    const Run run = run_plate(arguments);
    CHECK(run.status == 0);
    CHECK(run.err.empty());
    CHECK(run.out.find(":\n  plate ") != std::string::npos);
  }
  CHECK(run_plate({"--version"}).out.rfind("plate ", 0) == 0);
}
