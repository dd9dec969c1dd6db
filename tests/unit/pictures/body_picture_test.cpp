// SPDX-License-Identifier: MPL-2.0
#include "pixels.h"
#include "sample_pictures.h"
#include "svg_text.h"
#include "temporary_folder.h"

#include <plate/core/error.h>
#include <plate/meshes/body_picture.h>
#include <plate/meshes/level_picture.h>

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace plate;
using namespace plate::test;

namespace
{

/// Modes of an invented body of two equal plates.
std::vector<BodyModePicture> invented_modes(const ShellMesh& mesh)
{
  std::vector<BodyModePicture> modes;
  for (const std::string name : {"A0", "CBR", "", "B1-"})
  {
    const int number = static_cast<int>(modes.size()) + 1;
    const std::vector<double> shape = sample_mode(mesh, number).normal_displacement;
    modes.push_back({.number = number,
                     .frequency_hz = 200.0 + 80.0 * number,
                     .name = name,
                     .loss = 0.021,
                     .air_share = number == 1 ? 0.66 : 0.01,
                     .top = shape,
                     .back = shape});
  }
  modes[0].pressure = modes[0].top;
  return modes;
}

LevelPicture invented_levels()
{
  LevelPicture picture{.title = "Invented body",
                       .quantity = "mobility, dB re 1 s/kg",
                       .frequency_hz = {50.0, 100.0, 500.0, 2000.0},
                       .curves = {{.label = "together", .levels = {-60.0, -40.0, -35.5, -52.0}},
                                  {.label = "rocking", .levels = {-50.0, -45.0, -21.0, -30.0}}}};
  for (const double f : {200.0, 204.0, 206.0, 500.0, 5000.0})
    picture.marks.push_back({.frequency_hz = f, .label = "B1-"});
  return picture;
}

} // namespace

TEST_CASE("A sheet of body modes says names, frequencies, losses, shares of the air and which side is which")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  BodyView view{.top = {.mesh = mesh, .title = "Invented body"}, .back = {.mesh = mesh}, .air = {.mesh = mesh}};
  std::swap(view.back.left, view.back.right);
  write_body_sheet(folder / "modes.svg", view, invented_modes(mesh));
  const std::vector<WordBox> words = checked_words(folder / "modes.svg");
  for (const std::string expected :
       {"Invented body", "1 \u00b7 A0", "280.0 Hz", "loss 2.1 %, air 66 %", "2 \u00b7 CBR", "3", "4 \u00b7 B1-", "top",
        "back", "air", "top and air: bass side left; back: treble side left"})
  {
    CAPTURE(expected);
    CHECK(contains(words, expected));
  }
}

TEST_CASE("Both plates of a body share one scale and one sign")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  const BodyView view{.top = {.mesh = mesh}, .back = {.mesh = mesh}, .air = {.mesh = mesh}};
  const auto drawn = [&](double top, double back)
  {
    std::vector<BodyModePicture> modes = {{.number = 1, .frequency_hz = 100.0}};
    modes[0].top.assign(mesh.nodes.size(), top);
    modes[0].back.assign(mesh.nodes.size(), back);
    write_body_sheet(folder / "one.png", view, modes);
    return bytes_of(folder / "one.png");
  };
  CHECK(drawn(2.0, 1.0) == drawn(4.0, 2.0));   // any scale
  CHECK(drawn(2.0, 1.0) == drawn(-2.0, -1.0)); // any sign
  CHECK(drawn(2.0, 1.0) != drawn(2.0, -1.0));
  CHECK(drawn(2.0, 1.0) != drawn(2.0, 2.0));
  CHECK(drawn(1.0, 2.0) != drawn(2.0, 1.0));
}

TEST_CASE("Levels have their quantity, frequencies and marks; labels without room are left out")
{
  const TemporaryFolder folder;
  write_level_picture(folder / "levels.svg", invented_levels());
  const std::vector<WordBox> words = checked_words(folder / "levels.svg");
  for (const std::string expected : {"Invented body", "mobility, dB re 1 s/kg", "frequency, Hz", "50", "100", "1000",
                                     "2000", "\u221260", "\u221220", "together", "rocking", "B1-"})
  {
    CAPTURE(expected);
    CHECK(contains(words, expected));
  }
  std::size_t labels = 0;
  for (const WordBox& box : words)
    labels += box.words == "B1-" ? 1 : 0;
  CHECK(labels == 3); // two at 200 Hz in two rows, none for the third there, one at 500 Hz; 5000 Hz is beside the page
}

TEST_CASE("What is no body mode or no level is refused")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  const BodyView view{.top = {.mesh = mesh}, .back = {.mesh = mesh}, .air = {.mesh = mesh}};
  CHECK_THROWS_AS(write_body_sheet(folder / "a.png", view, {}), InvalidInput);
  std::vector<BodyModePicture> modes = invented_modes(mesh);
  modes[1].back.pop_back();
  CHECK_THROWS_AS(write_body_sheet(folder / "a.png", view, modes), InvalidInput);
  const auto refused = [&](auto change)
  {
    LevelPicture picture = invented_levels();
    change(picture);
    CHECK_THROWS_AS(write_level_picture(folder / "a.png", picture), InvalidInput);
  };
  refused([](LevelPicture& p) { p.frequency_hz[1] = 50.0; });
  refused([](LevelPicture& p) { p.frequency_hz[0] = 0.0; });
  refused([](LevelPicture& p) { p.curves.clear(); });
  refused([](LevelPicture& p) { p.curves[0].levels.pop_back(); });
  refused([](LevelPicture& p) { p.curves[0].levels[0] = std::numeric_limits<double>::quiet_NaN(); });
}
