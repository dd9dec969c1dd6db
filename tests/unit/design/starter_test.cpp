// SPDX-License-Identifier: MPL-2.0
#include "relative.h"

#include <plate/design/design.h>
#include <plate/design/design_document.h>
#include <plate/design/keys.h>
#include <plate/design/starter.h>

#include <doctest/doctest.h>

#include <sstream>
#include <string>
#include <vector>

using namespace plate;

namespace
{

constexpr InstrumentFamily families[] = {InstrumentFamily::violin, InstrumentFamily::viola, InstrumentFamily::cello};
constexpr PlateMake makes[] = {PlateMake::wood, PlateMake::laminate};

struct Range
{
  double low;
  double high;
};

/// Measures of makers for violin, viola and cello, in mm: common practice, no source.
struct UsualMeasure
{
  const char* key;
  Range of[3];
};

constexpr UsualMeasure usual_measures[] = {
    {"outline.length", {{355, 355}, {390, 430}, {755, 760}}},
    {"outline.upper_bout", {{168, 168}, {188, 200}, {340, 340}}},
    {"outline.centre_bout", {{112, 112}, {127, 140}, {230, 230}}},
    {"outline.lower_bout", {{206, 206}, {228, 250}, {440, 440}}},
    {"soundhole.1.length", {{75, 75}, {78, 82}, {135, 145}}},
    {"setup.stop", {{195, 195}, {219, 230}, {400, 400}}},
    {"setup.string_length", {{325, 330}, {370, 380}, {690, 700}}},
    {"bar.length", {{270, 270}, {310, 350}, {580, 600}}}, // viola: 80 less than a top of 390 to 430
    {"bar.width", {{5.5, 5.5}, {5.5, 7}, {10, 11}}},
    {"bar.height", {{11, 13}, {13, 15}, {22, 26}}},
    {"bar.end_height", {{3, 4}, {3, 4}, {3, 4}}},
};

constexpr UsualMeasure usual_wood[] = {
    {"thickness.centre", {{3.0, 3.0}, {3.1, 3.3}, {4.5, 5.5}}},
    {"thickness.bouts", {{2.7, 2.7}, {2.5, 3}, {3.8, 4.5}}},
    {"thickness.channel", {{2.4, 2.4}, {2.3, 2.8}, {3.5, 3.5}}},
    {"thickness.edge", {{4, 4}, {3.9, 4.1}, {4.5, 5}}},
};

/// Constants of spruce for tops in GPa and kg/m3: common practice, no source.
constexpr std::pair<const char*, Range> usual_spruce[] = {
    {"E1", {9, 16}},        {"E2", {0.6, 1.1}},     {"E3", {0.4, 0.6}},     {"G12", {0.6, 1.0}},
    {"G13", {0.55, 0.9}},   {"G23", {0.03, 0.05}},  {"nu12", {0.35, 0.45}}, {"density", {380, 480}},
    {"loss.1", {0.6, 1.0}}, {"loss.2", {1.8, 2.5}}, {"loss.4", {1.5, 2.0}},
};

void check_inside(const DesignDocument& design, const std::string& key, Range range)
{
  CAPTURE(key);
  CHECK(design.number(key) >= range.low);
  CHECK(design.number(key) <= range.high);
}

DesignDocument document(InstrumentFamily family, PlateMake make)
{
  return DesignDocument::from_text(starter_design(family, make), "starter.toml");
}

/// Lines that are a key behind a comment sign.
std::vector<std::size_t> optional_lines(const std::vector<std::string>& lines)
{
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (lines[i].size() > 1 && lines[i][0] == '#' && lines[i][1] != ' ' && lines[i].rfind("#:schema", 0) != 0)
      found.push_back(i);
  return found;
}

std::vector<std::string> lines_of(const std::string& text)
{
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);)
    lines.push_back(line);
  return lines;
}

} // namespace

TEST_CASE("starters keep to the trade's measures and to usual spruce")
{
  for (std::size_t f = 0; f < 3; ++f)
    for (const PlateMake make : makes)
    {
      const DesignDocument design = document(families[f], make);
      for (const UsualMeasure& usual : usual_measures)
        check_inside(design, usual.key, usual.of[f]);
      for (const auto& [constant, range] : usual_spruce)
        check_inside(design, std::string("material.spruce.") + constant, range);
      if (make == PlateMake::wood)
        for (const UsualMeasure& usual : usual_wood)
          check_inside(design, usual.key, usual.of[f]);
    }
}

TEST_CASE("the arch of a starter is the overall height of makers without the edge")
{
  // Overall heights in mm: common practice, no source. The rise of the mid-surface lacks the edge thickness.
  constexpr Range overall[] = {{15.5, 15.5}, {16, 18}, {24, 28}};
  for (std::size_t f = 0; f < 3; ++f)
  {
    const DesignDocument wood = document(families[f], PlateMake::wood);
    const double height = wood.number("arching.height") + wood.number("thickness.edge");
    CHECK(height >= overall[f].low);
    CHECK(height <= overall[f].high);
    CHECK(document(families[f], PlateMake::laminate).number("arching.height") == wood.number("arching.height"));
  }
}

TEST_CASE("a starter is a design with two f-holes, bar and layup")
{
  for (const InstrumentFamily family : families)
    for (const PlateMake make : makes)
    {
      const Design design = document(family, make).design();
      CHECK(design.geometry.soundholes.size() == 1);
      CHECK(design.bar.has_value());
      CHECK(design.laminate.plies.size() == (make == PlateMake::wood ? 1U : 5U));
      CHECK(design.supports.empty());
    }
}

TEST_CASE("every line of a starter has its meaning, and each optional key can be switched on")
{
  for (const PlateMake make : makes)
  {
    const std::vector<std::string> lines = lines_of(starter_design(InstrumentFamily::viola, make));
    const std::vector<std::size_t> optional = optional_lines(lines);
    CHECK(optional.size() > 20);
    for (const std::size_t chosen : optional)
    {
      std::string text;
      for (std::size_t i = 0; i < lines.size(); ++i)
      {
        // A table that is commented out is opened with the first of its keys.
        const bool header = lines[i].rfind("#[", 0) == 0;
        text += (i == chosen || header ? lines[i].substr(1) : lines[i]) + "\n";
      }
      CAPTURE(lines[chosen]);
      CHECK_NOTHROW(static_cast<void>(DesignDocument::from_text(text, "starter.toml")));
    }
    for (const std::string& line : lines)
      CHECK(line.size() <= 120);
  }
}

TEST_CASE("f-hole measures that a starter shows as defaults are those that hold without them")
{
  for (const InstrumentFamily family : families)
  {
    const std::vector<std::string> lines = lines_of(starter_design(family, PlateMake::wood));
    std::string shown;
    std::string hidden;
    for (const std::string& line : lines)
    {
      const bool own = line.find("#where") == 0 || line.find("#upper_eye") == 0 || line.find("#lower_eye") == 0 ||
                       line.find("#stem") == 0 || line.find("#tilt") == 0;
      shown += line.substr(own ? 1 : 0) + "\n";
      hidden += line + "\n";
    }
    const Design with = DesignDocument::from_text(shown, "shown.toml").design();
    const Design without = DesignDocument::from_text(hidden, "hidden.toml").design();
    const FHole& given = std::get<FHole>(with.geometry.soundholes[0]);
    const FHole implied =
        f_hole_with_defaults(std::get<FHole>(without.geometry.soundholes[0]), without.geometry.outline);
    // Four digits are written.
    CHECK((*given.where - *implied.where).norm() < 1e-5);
    CHECK(*given.upper_eye == test::relative(*implied.upper_eye, 1e-3));
    CHECK(*given.lower_eye == test::relative(*implied.lower_eye, 1e-3));
    CHECK(*given.stem == test::relative(*implied.stem, 1e-3));
    CHECK(given.tilt->in_degrees() == doctest::Approx(implied.tilt->in_degrees()).epsilon(1e-3));
  }
}
