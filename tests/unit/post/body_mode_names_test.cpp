// SPDX-License-Identifier: MPL-2.0
// What the names mean: common practice, no source. The modes are invented.
#include <plate/post/body_mode_names.h>

#include <doctest/doctest.h>

#include <map>
#include <string>

using namespace plate;

namespace
{

/// The usual five among others.
std::vector<BodyModeTraits> usual_modes()
{
  return {{.frequency_hz = 220.0, .air_share = 0.7, .outflow = 0.2, .wall_volume = 0.08},
          {.frequency_hz = 280.0, .air_share = 0.01, .shear_share = 0.5},
          {.frequency_hz = 300.0, .air_share = 0.8, .outflow = 0.001, .wall_volume = 0.001},
          {.frequency_hz = 380.0, .air_share = 0.6, .longitudinal_share = 0.6, .wall_volume = 0.2},
          {.frequency_hz = 420.0, .air_share = 0.2, .outflow = 0.1, .wall_volume = 0.1},
          {.frequency_hz = 470.0, .longitudinal_share = 0.3, .wall_volume = 0.05},
          {.frequency_hz = 500.0, .air_share = 0.1, .wall_volume = 0.15},
          {.frequency_hz = 700.0, .air_share = 0.1, .wall_volume = 0.3}};
}

std::map<std::string, BodyModeName> by_name(const std::vector<BodyModeTraits>& modes, double first_air_hz = 430.0)
{
  std::map<std::string, BodyModeName> out;
  for (const BodyModeName& name : name_body_modes(modes, first_air_hz))
    out.emplace(name.name, name);
  return out;
}

} // namespace

TEST_CASE("each of the five modes of a body is found by what it is")
{
  auto names = by_name(usual_modes());
  REQUIRE(names.size() == 5);
  CHECK(names["A0"].mode == 0);
  CHECK(names["CBR"].mode == 1);
  CHECK(names["A1"].mode == 3); // its walls move most below 500 Hz, but it has a name
  CHECK(names["B1-"].mode == 4);
  CHECK(names["B1+"].mode == 6); // 700 Hz is more than three times A0
}

TEST_CASE("certainty is what the next best mode leaves")
{
  auto names = by_name(usual_modes());
  CHECK(names["A1"].certainty == doctest::Approx(0.5)); // 0.3 of 0.6, by hand
  CHECK(names["CBR"].certainty == doctest::Approx(1.0));
  // (0.05 / 470)^2 beside (0.1 / 420)^2 and (0.15 / 500)^2, by hand.
  CHECK(names["B1-"].certainty == doctest::Approx(0.80036).epsilon(1e-4));
  CHECK(names["B1+"].certainty == doctest::Approx(0.87426).epsilon(1e-4));
}

TEST_CASE("a mode that lacks the character gets no name")
{
  std::vector<BodyModeTraits> modes = usual_modes();
  for (BodyModeTraits& mode : modes)
    mode.shear_share = 0.09;
  CHECK(by_name(modes).count("CBR") == 0);
  for (BodyModeTraits& mode : modes)
    mode.outflow = 0.0; // a closed body
  const auto closed = by_name(modes);
  CHECK(closed.count("A0") == 0);
  CHECK(closed.count("B1-") == 0);
  CHECK(by_name({}).empty());
}

TEST_CASE("A0 lies below the cavity's first mode, also where that is low")
{
  std::vector<BodyModeTraits> modes = usual_modes();
  modes[2].outflow = 0.4; // more than A0, but above 250 Hz
  CHECK(by_name(modes, 250.0)["A0"].mode == 0);
  CHECK(by_name(modes)["A0"].mode == 2);
}

TEST_CASE("names come in order of frequency")
{
  std::size_t last = 0;
  for (const BodyModeName& name : name_body_modes(usual_modes(), 430.0))
  {
    CHECK(name.mode >= last);
    last = name.mode;
  }
}

TEST_CASE("names that are given are known as such")
{
  for (const BodyModeName& name : name_body_modes(usual_modes(), 430.0))
    CHECK(is_body_mode_name(name.name));
  for (const char* other : {"", "M5", "B1", "A2"})
    CHECK_FALSE(is_body_mode_name(other));
}
