// SPDX-License-Identifier: MPL-2.0
#include "pixels.h"
#include "sample_pictures.h"
#include "svg_text.h"
#include "temporary_folder.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

using namespace plate;
using namespace plate::test;

namespace
{

DesignModes design(const ShellMesh& mesh, const std::string& title, double mass, int count)
{
  return {.view = {.mesh = mesh, .title = title}, .mass = mass, .modes = sample_modes(mesh, count)};
}

/// One mode that is 1 all over.
DesignModes uniform_design(const ShellMesh& mesh, double value)
{
  DesignModes design{.view = {.mesh = mesh}, .mass = 0.05, .modes = {sample_mode(mesh, 1)}};
  design.modes[0].normal_displacement.assign(mesh.nodes.size(), value);
  return design;
}

} // namespace

TEST_CASE("Frequencies differ by an octave of 1200 cents and a semitone of 100")
{
  CHECK(frequency_difference(220.0, 440.0).cents == doctest::Approx(1200.0));
  CHECK(frequency_difference(220.0, 440.0).percent == doctest::Approx(100.0));
  CHECK(frequency_difference(440.0, 440.0 * std::pow(2.0, -1.0 / 12.0)).cents == doctest::Approx(-100.0));
}

TEST_CASE("Two designs side by side say titles, masses, names, frequencies and differences")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  const DesignModes first = design(mesh, "Invented spruce", 0.08, 6);
  DesignModes second = design(mesh, "Invented laminate", 0.07, 6);
  second.modes[1].frequency_hz *= 1.059463; // an equally tempered semitone: 2^(1/12)
  const std::vector<ModePair> pairs = {{0, 0}, {1, 1}, {2, 3}, {3, 2}, {4, 4}, {5, 5}};
  write_side_by_side(folder / "both.svg", first, second, pairs);
  const std::vector<WordBox> words = checked_words(folder / "both.svg");
  for (const std::string expected : {"left: Invented spruce, 80.0 g", "right: Invented laminate, 70.0 g (\u221212.5 %)",
                                     "M1 twist", "0.0 %, 0 cents", "M2 X", "+5.9 %, +100 cents", "modes 3 and 4",
                                     "3 \u00b7 183.6 Hz", "4 \u00b7 244.8 Hz", "M5 ring", "mode 6"})
  {
    CAPTURE(expected);
    CHECK(contains(words, expected));
  }
}

TEST_CASE("Two designs are drawn at one scale, the first on the left")
{
  const TemporaryFolder folder;
  const ShellMesh large = make_mesh({.length = 0.4, .width = 0.2});
  const ShellMesh small = make_mesh({.length = 0.3, .width = 0.16});
  write_side_by_side(folder / "both.png", uniform_design(large, 1.0), uniform_design(small, 1.0), {{ModePair{}}});
  const Pixels pixels(folder / "both.png");
  const int legend = pixels.height() * 4 / 5;
  const int middle = pixels.width() / 2;
  const Eigen::Vector2d left = pixels.extent_of_warm({0, middle}, legend);
  const Eigen::Vector2d right = pixels.extent_of_warm({middle, pixels.width()}, legend);
  CHECK(left[0] / left[1] == doctest::Approx(0.2 / 0.4).epsilon(0.02));
  CHECK(left[0] / right[0] == doctest::Approx(0.2 / 0.16).epsilon(0.02));
  CHECK(left[1] / right[1] == doctest::Approx(0.4 / 0.3).epsilon(0.02));
}

TEST_CASE("The second mode of a pair is drawn with the sign that makes it like the first")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  // Up at one end, a little less down at the other; in the second the lower end moves a little more.
  const auto tilted = [&](double up, double down)
  {
    DesignModes design{.view = {.mesh = mesh}, .mass = 0.05, .modes = {sample_mode(mesh, 1)}};
    design.modes[0].normal_displacement = at_nodes(mesh, [&](double x, double) { return x * (x > 0.0 ? up : down); });
    return design;
  };
  write_side_by_side(folder / "both.png", tilted(1.0, 0.9), tilted(0.9, 1.0), {{ModePair{}}});
  const Pixels pixels(folder / "both.png");
  const int legend = pixels.height() * 4 / 5;
  const int middle = pixels.width() / 2;
  const double left = pixels.centre_of(Pixels::Hue::warm, {0, middle}, legend)[1];
  const double right = pixels.centre_of(Pixels::Hue::warm, {middle, pixels.width()}, legend)[1];
  CHECK(std::abs(left - right) < 0.05 * pixels.height());
}

TEST_CASE("Pairs that cannot be drawn are refused and leave no file")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  const DesignModes good = design(mesh, "Invented", 0.08, 2);
  CHECK_THROWS_WITH_AS(write_side_by_side(folder / "both.svg", good, good, {}), doctest::Contains("no pairs"),
                       InvalidInput);
  const std::vector<ModePair> beyond = {{.first = 0, .second = 2}};
  CHECK_THROWS_WITH_AS(write_side_by_side(folder / "both.svg", good, good, beyond),
                       doctest::Contains("mode 3 of 'Invented', which has 2"), InvalidInput);
  DesignModes silent = good;
  silent.modes[1].frequency_hz = 0.0;
  const std::vector<ModePair> pairs = {{.first = 1, .second = 1}};
  CHECK_THROWS_AS(write_side_by_side(folder / "both.svg", silent, good, pairs), InvalidInput);
  CHECK(std::filesystem::is_empty(folder.path()));
}
