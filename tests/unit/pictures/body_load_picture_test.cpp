// SPDX-License-Identifier: MPL-2.0
#include "pixels.h"
#include "sample_pictures.h"
#include "svg_text.h"
#include "temporary_folder.h"

#include <plate/core/error.h>
#include <plate/meshes/body_load_picture.h>

#include <doctest/doctest.h>

using namespace plate;
using namespace plate::test;

namespace
{

/// A field that rises along x, of that height at the neck end.
std::vector<double> slope(const ShellMesh& mesh, double most)
{
  double longest = 0.0;
  for (const Eigen::Vector3d& node : mesh.nodes)
    longest = std::max(longest, node.x());
  std::vector<double> values;
  for (const Eigen::Vector3d& node : mesh.nodes)
    values.push_back(most * node.x() / longest);
  return values;
}

BodyLoadPicture invented_load(const ShellMesh& mesh, double top, double back)
{
  return {.load = "strings: 80 N",
          .top = {.load = {}, .normal_displacement = slope(mesh, top), .strength_used = slope(mesh, top)},
          .back = {.load = {},
                   .normal_displacement = slope(mesh, back),
                   .strength_used = slope(mesh, back),
                   .worst = {.at = {0.0, 0.0}, .label = "margin 2.5", .meaning = "where strength is used most"}}};
}

} // namespace

TEST_CASE("Maps of a loaded body say what they show and which side is which")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  BodyView view{.top = {.mesh = mesh, .title = "Invented body"}, .back = {.mesh = mesh}, .air = {.mesh = mesh}};
  std::swap(view.back.left, view.back.right);
  write_deflection_map(folder / "deflection.svg", view, invented_load(mesh, 2e-4, -1e-4));
  write_strength_map(folder / "strength.svg", view, invented_load(mesh, 0.2, 0.4));
  const std::vector<WordBox> deflection = checked_words(folder / "deflection.svg");
  for (const std::string expected : {"Invented body", "Deflection, mm", "strings: 80 N", "top", "back",
                                     "inward (-) and outward (+), mm", "top: bass side left; back: treble side left"})
  {
    CAPTURE(expected);
    CHECK(contains(deflection, expected));
  }
  CHECK_FALSE(contains(deflection, "margin 2.5"));
  const std::vector<WordBox> strength = checked_words(folder / "strength.svg");
  CHECK(contains(strength, "Strength used, %"));
  CHECK(contains(strength, "margin 2.5"));
  CHECK(contains(strength, "where strength is used most"));
}

TEST_CASE("Both plates of a loaded body share one scale of colours and contours")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  const BodyView view{.top = {.mesh = mesh}, .back = {.mesh = mesh}, .air = {.mesh = mesh}};
  const auto labels = [&](double back)
  {
    write_deflection_map(folder / "map.svg", view, invented_load(mesh, 1e-4, back));
    return words_in(bytes_of(folder / "map.svg"));
  };
  // The top alone has contours each 0.02 mm or closer; beside a back that moves fifty times as far it has none of them.
  CHECK(contains(labels(1e-4), "0.04"));
  CHECK_FALSE(contains(labels(5e-3), "0.04"));
}

TEST_CASE("A loaded body that does not move has a map without contours, and wrong fields are refused")
{
  const TemporaryFolder folder;
  const ShellMesh mesh = make_mesh({});
  const BodyView view{.top = {.mesh = mesh}, .back = {.mesh = mesh}, .air = {.mesh = mesh}};
  CHECK_NOTHROW(write_deflection_map(folder / "still.png", view, invented_load(mesh, 0.0, 0.0)));
  BodyLoadPicture wrong = invented_load(mesh, 1e-4, 1e-4);
  wrong.back.normal_displacement.pop_back();
  wrong.back.strength_used.clear();
  CHECK_THROWS_WITH_AS(write_deflection_map(folder / "wrong.png", view, wrong), doctest::Contains("another mesh"),
                       InvalidInput);
  CHECK_THROWS_AS(write_strength_map(folder / "wrong.png", view, wrong), InvalidInput);
}
