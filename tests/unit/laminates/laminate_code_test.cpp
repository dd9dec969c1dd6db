// SPDX-License-Identifier: MPL-2.0
#include <plate/core/error.h>
#include <plate/laminates/laminate_code.h>

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <string>
#include <string_view>

using plate::CodePly;
using plate::InvalidInput;
using plate::parse_laminate_code;

namespace
{

/// The expanded code as plain text, "0 90 core", so that a failing check prints both stacks.
std::string expanded(std::string_view code)
{
  std::string out;
  for (const CodePly& ply : parse_laminate_code(code))
  {
    if (!out.empty())
      out += ' ';
    const double degrees = ply.angle.in_degrees();
    const double rounded = std::round(degrees * 1e6) / 1e6;
    std::string number = std::to_string(rounded);
    number.erase(number.find_last_not_of('0') + 1);
    if (number.back() == '.')
      number.pop_back();
    out += ply.material.empty() ? number : ply.material;
  }
  return out;
}

std::string error_of(std::string_view code)
{
  try
  {
    static_cast<void>(parse_laminate_code(code));
  }
  catch (const InvalidInput& error)
  {
    return error.what();
  }
  return "no error";
}

void check_error(std::string_view code, std::initializer_list<std::string_view> parts)
{
  const std::string text = error_of(code);
  CAPTURE(text);
  for (const std::string_view part : parts)
  {
    CAPTURE(part);
    CHECK(text.find(part) != std::string::npos);
  }
}

} // namespace

// The stacks below are written out by hand from the rules of the standard orientation code [ASTM-D6507].

TEST_CASE("plies are listed in the order written, from the inside")
{
  CHECK(expanded("[0]") == "0");
  CHECK(expanded("[0/45/90]") == "0 45 90");
  CHECK(expanded("[0/-45/+30.5]T") == "0 -45 30.5");
  CHECK(expanded(" [ 0 / 90 ] ") == "0 90");
}

TEST_CASE("s mirrors the code")
{
  CHECK(expanded("[0/90]s") == "0 90 90 0");
  CHECK(expanded("[0/60/-60]S") == "0 60 -60 -60 60 0");
}

TEST_CASE("a repeat comes before the mirror")
{
  CHECK(expanded("[0/60/-60]2s") == "0 60 -60 0 60 -60 -60 60 0 -60 60 0");
  CHECK(expanded("[45/-45]2") == "45 -45 45 -45");
  CHECK(expanded("[0/90]_2s") == "0 90 0 90 90 0 90 0");
}

TEST_CASE("plus-minus is two plies with the upper sign first")
{
  CHECK(expanded("[0/90/±45]s") == "0 90 45 -45 -45 45 90 0");
  CHECK(expanded("[0/90/+-45]s") == expanded("[0/90/±45]s"));
  CHECK(expanded("[+/-30/0]") == "30 -30 0");
  CHECK(expanded("[∓45]") == "-45 45");
  CHECK(expanded("[-+45]") == "-45 45");
  CHECK(expanded("[±45/∓45]") == "45 -45 -45 45");
  CHECK(expanded("[−45]") == "-45");
}

TEST_CASE("a subscript repeats a ply and a number behind a group the group")
{
  CHECK(expanded("[0_2/90_3]") == "0 0 90 90 90");
  CHECK(expanded("[(0/90)2/45]s") == "0 90 0 90 45 45 90 0 90 0");
  CHECK(expanded("[(±45)_2/0]") == "45 -45 45 -45 0");
  CHECK(expanded("[((0/90)2/45)2]") == "0 90 0 90 45 0 90 0 90 45");
  CHECK(expanded("[-45_2]") == "-45 -45");
}

TEST_CASE("the overbar leaves the middle ply single")
{
  CHECK(expanded("[0/90/~0]s") == "0 90 0 90 0");
  CHECK(expanded("[0/~90]s") == "0 90 0");
  CHECK(expanded("[0/~core]s") == "0 core 0");
}

TEST_CASE("a name is a ply of its own")
{
  CHECK(expanded("[0/90/core]s") == "0 90 core core 90 0");
  CHECK(expanded("[carbon_ud/balsa-2/(core)2]") == "carbon_ud balsa-2 core core");
}

TEST_CASE("a thousand plies pass and one more does not")
{
  CHECK(parse_laminate_code("[0_500]s").size() == 1000);
  check_error("[0_501]s", {"1002 plies", "at most 1000"});
  check_error("[((((((0_9)9)9)9)9)9)9]", {"at most 1000"});
}

TEST_CASE("an error names the column in characters, what stands there and what is allowed")
{
  check_error("[0/90/±45s", {"column 10", "\"s\"", "]"});
  check_error("", {"column 1", "the end", "["});
  check_error("0/90", {"column 1", "\"0\"", "["});
  check_error("[]", {"column 2", "\"]\"", "angle"});
  check_error("[0//90]", {"column 4", "\"/\"", "angle"});
  check_error("[0/90", {"column 6", "the end", "]"});
  check_error("[0/90]x", {"column 7", "\"x\"", "repeat"});
  check_error("[0/90]s2", {"column 8", "\"2\""});
  check_error("[0/361]", {"column 4", "360", "361"});
  check_error("[0/-1e3]", {"column 6", "\"e\""});
  check_error("[4.5.6]", {"column 2", "angle"});
  check_error("[0/90]0", {"column 7", "1 to 1000"});
  check_error("[0_/90]", {"column 4", "number of plies"});
  check_error("[(0/90]", {"column 7", "\"]\"", ")"});
  check_error("[0/é]", {"column 4", "\"é\""});
  check_error("[((((((((((0))))))))))]", {"nested"});
}

TEST_CASE("what can be read in two ways is refused")
{
  check_error("[±45_2]", {"column 5", "two ways"});
  check_error("[0/~90]", {"column 4", "symmetric"});
  check_error("[0/~90]2s", {"column 4", "symmetric"});
  check_error("[~0/90]s", {"column 2", "last ply"});
  check_error("[0/~±45]s", {"column 5", "one ply"});
  check_error("[0/~90_2]s", {"column 7", "one ply"});
}

TEST_CASE("very long or binary text is refused without harm")
{
  check_error(std::string(5000, '['), {"5000 bytes"});
  check_error(std::string_view("[0\0]", 4), {"column 3"});
  check_error("\xff\xfe[0]", {"column 1"});
  check_error("[99999999999999999999]", {"column 2", "360"});
  check_error("[0]99999999999999999999", {"column 4", "1 to 1000"});
}
