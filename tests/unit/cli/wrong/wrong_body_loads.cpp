// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{
namespace
{

/// Lines 1 to 3 of a body of the same plate twice.
std::string body(const std::string& more)
{
  return "[body]\ntop = \"plate.toml\"\nback = \"plate.toml\"\n" + more;
}

} // namespace

std::vector<WrongFile> wrong_body_loads()
{
  return {
      {"a key with a slip", body("[bridge]\nheigth = 37\n"), {":5: bridge.heigth = 37", "nearest: bridge.height"}},
      {"a bridge without height", body("[bridge]\nheight = 0\n"), {":5: bridge.height = 0", "greater than 0"}},
      {"a bridge of the wrong type", body("[bridge]\nheight = \"37\"\n"), {":5: bridge.height", "a number in mm"}},
      {"a squeeze that pulls", body("[handling]\nsqueeze = -5\n"), {":5: handling.squeeze = -5", "greater than 0"}},
      {"how a bare plate is moved", body("[handling]\nlift = 3\n"), {":5: handling.lift = 3", "leave it out"}},
      {"a thumb beside the top", body("[handling]\nthumb_at = [0, 150]\n"), {":5: handling.thumb_at", "beside"}},
      {"a knock-down that helps", body("[knock_down]\nhot_wet = 1.5\n"), {":5: knock_down.hot_wet = 1.5", "at most 1"}},
      {"a post with a length", body("[soundpost]\nat = [0, 0]\nlength = 40\n"), {":6: soundpost.length = 40"}},
      {"a table of plates", body("[arching]\nheight = 15\n"), {":4: arching", "knock_down"}},
      {"a top that is not there", "[body]\ntop = \"none.toml\"\nback = \"plate.toml\"\n", {"none.toml"}},
      {"no back", "[body]\ntop = \"plate.toml\"\n", {"body.back", "missing"}},
      {"the rim of a body", body(""), {"--rim", "leave it out"}, {"--rim", "clamped"}},
      {"a plate beside a body", body(""), {"--reference", "give a body"}, {"--reference", "plate.toml"}},
  };
}

} // namespace plate::test
