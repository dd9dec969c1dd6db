// SPDX-License-Identifier: MPL-2.0
#include "pixels.h"
#include "sample_pictures.h"
#include "temporary_folder.h"

#include <plate/core/error.h>
#include <plate/meshes/picture.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

using namespace plate;
using test::at_nodes;
using test::bytes_of;
using test::make_mesh;
using test::Pixels;
using test::sample_mode;
using test::sample_polar;
using test::sample_sweep;
using test::TemporaryFolder;

namespace
{

double bump(double x, double y, double x0, double y0)
{
  return std::exp(-((x - x0) * (x - x0) + (y - y0) * (y - y0)) / 0.0008);
}

} // namespace

TEST_CASE("A lobe near the neck on the bass side appears at the top left, its opposite at the bottom right")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({.rise = 0.015});
  const PlateView view{.mesh = mesh};
  // Positive at x, y > 0 and weaker negative at x, y < 0; convention: x to the neck (up), y to the bass side (left).
  ModeShapePicture mode{.number = 1, .frequency_hz = 100.0};
  mode.normal_displacement =
      at_nodes(mesh, [](double x, double y) { return bump(x, y, 0.1, 0.055) - 0.8 * bump(x, y, -0.1, -0.055); });
  write_mode_picture(folder / "mode.png", view, mode);
  const Pixels pixels(folder / "mode.png");
  const int legend = pixels.height() * 4 / 5; // the legend with both colours stands below
  const Eigen::Vector2d middle(0.5 * pixels.width(), 0.5 * pixels.height());
  const Eigen::Vector2d warm = pixels.centre_of(Pixels::Hue::warm, legend);
  const Eigen::Vector2d cold = pixels.centre_of(Pixels::Hue::cold, legend);
  CHECK(warm[0] < middle[0]);
  CHECK(warm[1] < middle[1]);
  CHECK(cold[0] > middle[0]);
  CHECK(cold[1] > middle[1]);
  // One scale in both directions: the lobes are 0.2 m apart along and 0.11 m across.
  CHECK((cold[1] - warm[1]) / (cold[0] - warm[0]) == doctest::Approx(0.2 / 0.11).epsilon(0.03));

  // The same shape with the other sign is the same mode and the same picture.
  const std::string first = bytes_of(folder / "mode.png");
  for (double& value : mode.normal_displacement)
    value = -value;
  write_mode_picture(folder / "mode.png", view, mode);
  CHECK(bytes_of(folder / "mode.png") == first);
}

TEST_CASE("Holes stay open: the page shows through")
{
  const TemporaryFolder folder;
  // The hole is the middle cell of 5 × 5; the displacement is the same everywhere.
  const ShellMesh mesh = make_mesh({.length = 0.2, .width = 0.2, .num_x = 5, .num_y = 5, .hole = {2, 3, 2, 3}});
  const PlateView view{.mesh = mesh};
  const ModeShapePicture mode{
      .number = 1, .frequency_hz = 1.0, .name = {}, .normal_displacement = std::vector<double>(mesh.nodes.size(), 1.0)};
  write_mode_picture(folder / "mode.png", view, mode);
  const Pixels pixels(folder / "mode.png");
  // Centre of the plate: mean of all warm pixels above the legend, as hole and plate are symmetric but for one sign.
  const Eigen::Vector2d centre = pixels.centre_of(Pixels::Hue::warm, pixels.height() * 4 / 5);
  const auto [red, green, blue] = pixels.at(static_cast<int>(centre[0]), static_cast<int>(centre[1]));
  CHECK(red == 255);
  CHECK(green == 255);
  CHECK(blue == 255);
}

TEST_CASE("The same input gives the same bytes, whatever was drawn before")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({.rise = 0.017, .hole = {4, 7, 5, 6}, .bar = {2, 10, 4, 5}});
  const PlateView view{.mesh = mesh,
                       .title = "Invented plate",
                       .regions = {{.outline = {{0.0, 0.0}, {0.05, 0.0}, {0.0, 0.05}}, .label = "patch"}},
                       .points = {{.at = {-0.1, 0.02}, .label = "5 g"}}};
  const std::vector<ModePair> pairs = {{.first = 0, .second = 1}};
  const std::vector<ModeShapePicture> modes = {sample_mode(mesh, 1), sample_mode(mesh, 2)};
  for (const std::string ending : {".svg", ".png"})
  {
    const auto draw_all = [&](const std::string& run)
    {
      write_mode_picture(folder / (run + "mode" + ending), view, modes[0]);
      write_contact_sheet(folder / (run + "sheet" + ending), view, modes);
      write_thickness_map(folder / (run + "thickness" + ending), view);
      write_arching_map(folder / (run + "arching" + ending), view);
      write_sweep_picture(folder / (run + "sweep" + ending), view, sample_sweep(mesh));
      write_polar_picture(folder / (run + "polar" + ending), sample_polar());
      write_side_by_side(folder / (run + "beside" + ending), {.view = view, .mass = 0.08, .modes = modes},
                         {.view = view, .mass = 0.07, .modes = modes}, pairs);
    };
    draw_all("first ");
    draw_all("second ");
    for (const std::string name : {"mode", "sheet", "thickness", "arching", "sweep", "polar", "beside"})
    {
      CAPTURE(name);
      const std::string first = bytes_of(folder / ("first " + name + ending));
      CHECK(first.size() > 1000);
      CHECK(first == bytes_of(folder / ("second " + name + ending)));
      CHECK(first.find("nan") == std::string::npos);
    }
  }
}

TEST_CASE("A contact sheet grows with the number of modes")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  const PlateView view{.mesh = mesh};
  std::vector<ModeShapePicture> modes;
  for (int k = 1; k <= 12; ++k)
    modes.push_back(sample_mode(mesh, k));
  write_contact_sheet(folder / "two.png", view, std::span(modes).first(2));
  write_contact_sheet(folder / "all.png", view, modes);
  const Pixels two(folder / "two.png");
  const Pixels all(folder / "all.png");
  CHECK(all.width() > two.width());
  CHECK(all.height() > two.height());
}

TEST_CASE("Displacement along the normal is the outward part of a vector field")
{
  // On a plane tilted about y by the angle with tan = 3/4 the unit normal is (-0.6, 0, 0.8).
  ShellMesh mesh = make_mesh({.num_x = 1, .num_y = 1});
  std::fill(mesh.normals.begin(), mesh.normals.end(), Eigen::Vector3d(-0.6, 0.0, 0.8));
  const std::vector<Eigen::Vector3d> field(mesh.nodes.size(), Eigen::Vector3d(1.0, 5.0, 2.0));
  CHECK(normal_displacement(mesh, field).at(3) == doctest::Approx(1.0));
  CHECK_THROWS_AS((void)normal_displacement(mesh, std::span(field).first(2)), InvalidInput);
}

TEST_CASE("Wrong input is refused and leaves no file")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  const PlateView view{.mesh = mesh};
  ModeShapePicture mode = sample_mode(mesh, 1);
  CHECK_THROWS_WITH_AS(write_mode_picture(folder / "mode.gif", view, mode), doctest::Contains(".gif"), InvalidInput);
  CHECK_THROWS_AS(write_contact_sheet(folder / "sheet.png", view, {}), InvalidInput);
  mode.normal_displacement.pop_back();
  CHECK_THROWS_AS(write_mode_picture(folder / "mode.png", view, mode), InvalidInput);
  const ShellMesh empty;
  CHECK_THROWS_AS(write_arching_map(folder / "arching.png", {.mesh = empty}), InvalidInput);
  CHECK_THROWS_AS(write_thickness_map(folder / "thickness.png", {.mesh = empty}), InvalidInput);

  const PlateRegion sliver{.outline = {{0.0, 0.0}, {0.1, 0.0}}, .label = "sliver"};
  CHECK_THROWS_WITH_AS(write_arching_map(folder / "arching.png", {.mesh = mesh, .regions = {sliver}}),
                       doctest::Contains("'sliver' has 2 corners"), InvalidInput);
  const MarkedPoint nowhere{.at = {0.0, std::numeric_limits<double>::infinity()}, .label = "5 g"};
  CHECK_THROWS_WITH_AS(write_arching_map(folder / "arching.png", {.mesh = mesh, .points = {nowhere}}),
                       doctest::Contains("'5 g'"), InvalidInput);

  SweepCurves sweep = sample_sweep(mesh);
  sweep.values = {1.0, 1.0, 1.2};
  CHECK_THROWS_AS(write_sweep_picture(folder / "sweep.svg", view, sweep), InvalidInput);
  sweep = sample_sweep(mesh);
  sweep.mass.pop_back();
  CHECK_THROWS_AS(write_sweep_picture(folder / "sweep.svg", view, sweep), InvalidInput);
  sweep = sample_sweep(mesh);
  for (SweepTrack& track : sweep.tracks)
    track.frequency_hz.assign(3, std::numeric_limits<double>::quiet_NaN());
  CHECK_THROWS_AS(write_sweep_picture(folder / "sweep.svg", view, sweep), InvalidInput);
  CHECK(std::filesystem::is_empty(folder.path()));
}

TEST_CASE("A picture that cannot be written is an error that names it")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  CHECK_THROWS_WITH_AS(write_mode_picture(folder / "missing/mode.svg", {.mesh = mesh}, sample_mode(mesh, 1)),
                       doctest::Contains("missing/mode.svg"), IoError);
  CHECK(std::filesystem::is_empty(folder.path()));
}
