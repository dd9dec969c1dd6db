// SPDX-License-Identifier: MPL-2.0
#include "sample_pictures.h"
#include "svg_text.h"
#include "temporary_folder.h"

#include <plate/core/error.h>
#include <plate/meshes/load_picture.h>
#include <plate/meshes/thickness_slope_picture.h>

#include <doctest/doctest.h>

using namespace plate;
using namespace plate::test;

namespace
{

struct Sample
{
  TemporaryFolder folder;
  ShellMesh mesh = make_mesh({.rise = 0.017, .hole = {4, 7, 5, 6}, .bar = {2, 10, 4, 5}});
  PlateView view{.mesh = mesh, .title = "Invented plate"};
  std::filesystem::path path = folder / "picture.svg";
};

} // namespace

TEST_CASE("A mode's picture says number, trade name, frequency and loss, and names the sides")
{
  Sample s;
  write_mode_picture(s.path, s.view, sample_mode(s.mesh, 2));
  const std::vector<WordBox> words = checked_words(s.path);
  for (const std::string expected : {"Mode 2 \u00b7 M2 X \u00b7 122.4 Hz", "loss 1.23 %", "Invented plate", "neck end",
                                     "bass side", "treble side", "nodal line", "bass bar"})
  {
    CAPTURE(expected);
    CHECK(contains(words, expected));
  }
}

TEST_CASE("Trade names are those makers use, other names stay")
{
  CHECK(trade_name("M1") == "M1 twist"); // usage of the trade: M1 twist, M2 (X), M5 (ring)
  CHECK(trade_name("M2") == "M2 X");
  CHECK(trade_name("M5") == "M5 ring");
  CHECK(trade_name("mode 3") == "mode 3");
  CHECK(trade_name("").empty());
}

TEST_CASE("A long title is cut to the page")
{
  Sample s;
  s.view.title = std::string(300, 'w');
  write_mode_picture(s.path, s.view, sample_mode(s.mesh, 1));
  (void)checked_words(s.path);
  write_contact_sheet(s.path, s.view, sample_modes(s.mesh, 1));
  (void)checked_words(s.path);
}

TEST_CASE("Contact sheets of few and many modes name each mode and no words overlap")
{
  Sample s;
  for (const int count : {1, 2, 5, 12, 60})
  {
    CAPTURE(count);
    write_contact_sheet(s.path, s.view, sample_modes(s.mesh, count));
    const std::vector<WordBox> words = checked_words(s.path);
    CHECK(contains(words, "1 \u00b7 M1 twist"));
    CHECK(std::count_if(words.begin(), words.end(), [](const WordBox& box) { return box.words == "loss 1.23 %"; }) ==
          count);
    if (count == 60)
      CHECK(contains(words, "60"));
  }
}

TEST_CASE("Maps say what they show and in which unit")
{
  Sample s;
  write_arching_map(s.path, s.view);
  CHECK(contains(checked_words(s.path), "Arching height, mm"));
  write_thickness_map(s.path, s.view);
  CHECK(contains(checked_words(s.path), "uniform, 2.80 mm"));
}

TEST_CASE("Maps of a load say what presses, what is shown, and mark the worst place")
{
  Sample s;
  LoadPicture picture = {.load = "strings: 87.8 N",
                         .worst = {.at = {0.05, 0.02}, .label = "margin 2.1", .meaning = "worst"}};
  for (const Eigen::Vector3d& node : s.mesh.nodes)
  {
    picture.normal_displacement.push_back(-1e-3 * (1.0 - node.x()));
    picture.strength_used.push_back(0.4 - node.x());
  }
  write_deflection_map(s.path, s.view, picture);
  std::vector<WordBox> words = checked_words(s.path); // none over another, all on the page
  for (const std::string expected : {"Deflection, mm", "strings: 87.8 N"})
    CHECK(contains(words, expected));
  write_strength_map(s.path, s.view, picture);
  words = checked_words(s.path);
  for (const std::string expected : {"Strength used, %", "strings: 87.8 N", "margin 2.1", "worst"})
    CHECK(contains(words, expected));
  picture.strength_used.pop_back();
  CHECK_THROWS_AS(write_strength_map(s.path, s.view, picture), InvalidInput);
}

TEST_CASE("A sweep names tracks and axes")
{
  Sample s;
  write_sweep_picture(s.path, s.view, sample_sweep(s.mesh));
  const std::vector<WordBox> words = checked_words(s.path);
  for (const std::string expected :
       {"M1 twist", "mode 2", "frequency, Hz", "mass, g", "layup.scale", "70.0 Hz", "80.0 g"})
  {
    CAPTURE(expected);
    CHECK(contains(words, expected));
  }
}

TEST_CASE("Marks of a design are in legends, and marked points have their label beside them")
{
  Sample s;
  s.view.regions = {{.outline = {{0.1, 0.05}, {0.1, -0.05}, {0.15, 0.0}}, .label = "carbon patch"},
                    {.outline = {{-0.1, 0.05}, {-0.1, -0.05}, {-0.15, 0.0}}, .label = "carbon patch"},
                    {.outline = {{-0.02, 0.05}, {-0.02, -0.05}, {-0.05, 0.0}}, .label = "flax patch"}};
  s.view.points = {{.at = {0.06, 0.03}, .label = "5 g"}};
  write_mode_picture(s.path, s.view, sample_mode(s.mesh, 1));
  std::vector<WordBox> words = checked_words(s.path);
  CHECK(contains(words, "carbon patch, flax patch"));
  CHECK(contains(words, "stuck-on mass"));
  CHECK(contains(words, "5 g"));
  write_arching_map(s.path, s.view);
  words = checked_words(s.path);
  CHECK(contains(words, "carbon patch, flax patch"));
  CHECK(contains(words, "5 g"));
  write_contact_sheet(s.path, s.view, sample_modes(s.mesh, 12));
  words = checked_words(s.path);
  CHECK(contains(words, "stuck-on mass: 5 g")); // no room for labels on the small plates
}

TEST_CASE("A map of what thickness does says unit, whole plate, where colours end and which mode stays")
{
  Sample s;
  ThicknessSlopePicture picture = {.label = "mode 5, M5 ring, 254.0 Hz", .whole = 66.9e3};
  UnmovedMode unmoved = {.label = "M2 X", .slopes = {}};
  for (const Eigen::Vector3d& node : s.mesh.nodes)
  {
    picture.slopes.push_back(1e7 * node.x() / 0.18); // -1 to 1 Hz/(mm cm2)
    unmoved.slopes.push_back(node.y());
  }
  write_thickness_slope_map(s.path, s.view, picture);
  std::vector<WordBox> words = checked_words(s.path);
  for (const std::string expected :
       {"Thickness, Hz per mm and cm\u00b2", "mode 5, M5 ring, 254.0 Hz; the whole plate +66.9 Hz per mm"})
  {
    CAPTURE(expected);
    CHECK(contains(words, expected));
  }
  picture.slopes.front() = 9e7; // one corner alone: colours are for the rest
  picture.unmoved = unmoved;
  write_thickness_slope_map(s.path, s.view, picture);
  words = checked_words(s.path);
  CHECK(contains(words, "thickness here leaves M2 X alone"));
  CHECK(std::any_of(words.begin(), words.end(),
                    [](const WordBox& box) {
                      return box.words.find("full colour beyond \u00b10.9") != std::string::npos &&
                             box.words.ends_with(" and 9.0");
                    }));

  picture.slopes.pop_back();
  CHECK_THROWS_AS(write_thickness_slope_map(s.path, s.view, picture), InvalidInput);
}

TEST_CASE("A map of thickness that does nothing is a map of one colour")
{
  Sample s;
  const ThicknessSlopePicture picture = {
      .label = "mode 1", .whole = 0.0, .slopes = std::vector<double>(s.mesh.nodes.size(), 0.0)};
  write_thickness_slope_map(s.path, s.view, picture);
  CHECK(contains(checked_words(s.path), "Thickness, Hz per mm and cm\u00b2"));
}
