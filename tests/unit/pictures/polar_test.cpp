// SPDX-License-Identifier: MPL-2.0
#include "sample_pictures.h"
#include "svg_text.h"
#include "temporary_folder.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <limits>

using namespace plate;
using namespace plate::test;

namespace
{

const WordBox& find(const std::vector<WordBox>& words, const std::string& wanted)
{
  const auto found = std::find_if(words.begin(), words.end(), [&](const WordBox& box) { return box.words == wanted; });
  REQUIRE(found != words.end());
  return *found;
}

} // namespace

TEST_CASE("A polar picture says directions, values, units and curves, 0 up and 90 degrees to the left")
{
  const TemporaryFolder folder;
  for (const std::size_t panels : {1U, 2U})
  {
    CAPTURE(panels);
    PolarPicture picture = sample_polar();
    picture.panels.resize(panels);
    write_polar_picture(folder / "polar.svg", picture);
    const std::vector<WordBox> words = checked_words(folder / "polar.svg");
    for (const std::string expected : {"Invented layup", "stretching, GPa", "laminate", "spruce", "5", "15"})
    {
      CAPTURE(expected);
      CHECK(contains(words, expected));
    }
    const WordBox& up = find(words, "0\u00b0 neck end");
    const WordBox& left = find(words, "90\u00b0");
    const WordBox& right = find(words, "270\u00b0");
    CHECK(up.high[1] < left.low[1]);
    CHECK(left.high[0] < up.low[0]);
    CHECK(up.high[0] < right.low[0]);
    CHECK(contains(words, "bending, N m") == (panels == 2));
  }
}

TEST_CASE("The curve of a constant is the circle of its value")
{
  const TemporaryFolder folder;
  PolarPicture picture{.title = {}, .panels = {{.heading = "E", .unit = "GPa", .curves = {{"a", {}}, {"b", {}}}}}};
  picture.panels[0].curves[0].values.assign(360, 10.0);
  picture.panels[0].curves[1].values.assign(360, 5.0);
  write_polar_picture(folder / "polar.svg", picture);
  const std::string svg = bytes_of(folder / "polar.svg");
  // Width of each closed line of many corners: the two curves, each twice as long as the other is across.
  static const std::regex path(R"re(<path[^>]* d="M ([^"]*)"/>)re");
  std::vector<double> widths;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), path); it != std::sregex_iterator(); ++it)
  {
    const std::string d = (*it)[1].str();
    if (std::count(d.begin(), d.end(), 'L') < 300)
      continue;
    static const std::regex point(R"re(([\d.]+) ([\d.]+))re");
    double low = 1e9;
    double high = -1e9;
    for (auto p = std::sregex_iterator(d.begin(), d.end(), point); p != std::sregex_iterator(); ++p)
    {
      low = std::min(low, std::stod((*p)[1].str()));
      high = std::max(high, std::stod((*p)[1].str()));
    }
    widths.push_back(high - low);
  }
  REQUIRE(widths.size() == 2);
  CHECK(widths[0] == doctest::Approx(2.0 * widths[1]).epsilon(1e-3));
}

TEST_CASE("Wrong polar data are refused and leave no file")
{
  const TemporaryFolder folder;
  const auto refused = [&](const PolarPicture& picture, const char* words)
  {
    CHECK_THROWS_WITH_AS(write_polar_picture(folder / "polar.svg", picture), doctest::Contains(words), InvalidInput);
    CHECK(std::filesystem::is_empty(folder.path()));
  };
  PolarPicture picture = sample_polar();
  picture.panels.clear();
  refused(picture, "0 panels");
  picture = sample_polar();
  picture.panels.push_back(picture.panels[0]);
  refused(picture, "3 panels");
  picture = sample_polar();
  picture.panels[0].curves[1].values.resize(2);
  refused(picture, "'spruce' has 2 values");
  picture = sample_polar();
  picture.panels[1].curves[0].values[3] = -1.0;
  refused(picture, "the value -1");
  picture.panels[1].curves[0].values[3] = std::numeric_limits<double>::quiet_NaN();
  refused(picture, "finite");
  picture = sample_polar();
  picture.panels[0].curves.clear();
  refused(picture, "nothing to draw");
  picture = sample_polar();
  for (int k = 0; k < 5; ++k)
    picture.panels[0].curves.push_back({.label = std::to_string(k), .values = {1.0, 1.0, 1.0}});
  refused(picture, "7 labels");
}
