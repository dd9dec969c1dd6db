// SPDX-License-Identifier: MPL-2.0
// What a reduced model may have as a parameter, and what not.
#include "changed_plate.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

using namespace plate;
using namespace plate::test;

namespace
{

constexpr double thickness = 2.8e-3; // [m]
constexpr int num_modes = 8;

Model carved_top(bool with_bar)
{
  Model model =
      plate_model(arched_rectangle(thickness, with_bar), solid(reference_spruce(), thickness, 5.0, Grain::carved));
  if (with_bar)
    model.bars = {
        {.material = reference_spruce(), .width = 8e-3, .profile = {{-0.11, 0.0, 0.11}, {3e-3, 10e-3, 3e-3}}}};
  return model;
}

Patch square_patch(double half_width)
{
  return {.side = PlateSide::inside,
          .region = PolygonRegion{{{-0.05, -half_width}, {0.02, -half_width}, {0.02, half_width}, {-0.05, half_width}}},
          .laminate = stack(reference_carbon(), 0.2e-3, {0.0, 90.0})};
}

void check_within(ChangedPlate& design, const ParameterBox& box, double tolerance)
{
  const ReducedModel reduced(design, box, {.num_modes = num_modes, .tolerance = tolerance});
  CHECK(reduced.figures().converged);
  const Comparison found = compare(design, reduced, 10, num_modes);
  CHECK(found.largest_error < tolerance);
  CHECK(found.share_within >= 0.95);
}

std::string refusal(ChangedPlate& design, const ParameterBox& box)
{
  try
  {
    const ReducedModel reduced(design, box, {.num_modes = 3});
  }
  catch (const InvalidInput& error)
  {
    return error.what();
  }
  return {};
}

} // namespace

TEST_CASE("moduli of carved wood, whose section knows slope and moduli together")
{
  ChangedPlate design(carved_top(false),
                      [](std::span<const double> p, Model& model)
                      {
                        OrthotropicElastic& elastic = model.material.laminate.plies[0].material.elastic;
                        elastic.E1 = p[0] * 1e9;
                        elastic.G23 = p[1] * 1e9;
                      });
  check_within(design, {{8.0, 0.02}, {15.0, 0.06}}, 1e-4);
}

TEST_CASE("height and wood of the bar, torsion included")
{
  ChangedPlate design(carved_top(true),
                      [](std::span<const double> p, Model& model)
                      {
                        model.bars[0].profile.height[1] = p[0] * 1e-3;
                        model.bars[0].material.elastic.E1 = p[1] * 1e9;
                      });
  check_within(design, {{7.0, 8.0}, {13.0, 15.0}}, 1e-4);
}

TEST_CASE("thickness of a graduated plate in its middle and at its edge")
{
  ChangedPlate design(carved_top(false),
                      [](std::span<const double> p, Model& model)
                      {
                        for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i)
                        {
                          const Eigen::Vector3d& x = model.mesh.nodes[i];
                          const double inner = (1.0 - std::pow(x.x() / 0.15, 2)) * (1.0 - std::pow(x.y() / 0.09, 2));
                          model.mesh.thickness[i] = 1e-3 * (p[1] + (p[0] - p[1]) * inner);
                        }
                      });
  check_within(design, {{2.5, 2.0}, {3.5, 3.0}}, 1e-4);
}

TEST_CASE("plies of a patch and the grams of a mass")
{
  Model model = carved_top(false);
  model.patches = {square_patch(0.03)};
  model.masses = {{.at = {0.04, 0.02}, .mass = 5e-3}};
  ChangedPlate design(model,
                      [](std::span<const double> p, Model& changed)
                      {
                        changed.patches[0].laminate.plies[1].thickness = p[0] * 1e-3;
                        changed.masses[0].mass = p[1] * 1e-3;
                      });
  check_within(design, {{0.1, 2.0}, {0.4, 20.0}}, 1e-4);
}

TEST_CASE("a clamped plate, which has no rigid motions")
{
  Model model = carved_top(false);
  support_all_sides(model, EdgeSupport::clamped);
  ChangedPlate design(model, [](std::span<const double> p, Model& changed)
                      { changed.material.laminate.plies[0].material.elastic.G12 = p[0] * 1e9; });
  check_within(design, {{0.4}, {1.2}}, 1e-5);
}

TEST_CASE("the mass of the air does not depend on the layup")
{
  // The full solve takes the air on a few modes, worth 5e-5 of a frequency (air_modes_test); the basis holds more.
  Model model = carved_top(false);
  model.air_density = 1.2;
  ChangedPlate design(model,
                      [](std::span<const double> p, Model& changed)
                      {
                        changed.material.laminate.plies[0].material.density = p[0];
                        changed.air_density = p[1];
                      });
  const ReducedModel reduced(design, {{350.0, 0.9}, {450.0, 1.3}}, {.num_modes = num_modes, .tolerance = 1e-5});
  CHECK(compare(design, reduced, 6, num_modes).largest_error < 1e-4);
  const double light = reduced.modes(std::array{400.0, 0.9}).frequencies_hz(0);
  const double heavy = reduced.modes(std::array{400.0, 1.3}).frequencies_hz(0);
  CHECK(heavy / light < 0.998);
}

TEST_CASE("what moves the mesh, an edge or a place is refused")
{
  const ParameterBox box = {{0.9}, {1.1}};
  ChangedPlate moved(carved_top(false),
                     [](std::span<const double> p, Model& model) { model.mesh.nodes[0].x() = -0.15 * p[0]; });
  CHECK(refusal(moved, box).find("nodes of the mesh move with the parameters") != std::string::npos);

  Model patched = carved_top(false);
  patched.patches = {square_patch(0.03)};
  ChangedPlate wider(patched,
                     [](std::span<const double> p, Model& model) { model.patches = {square_patch(0.03 * p[0])}; });
  CHECK(refusal(wider, box).find("edge of a patch moves") != std::string::npos);

  ChangedPlate broader(carved_top(true),
                       [](std::span<const double> p, Model& model) { model.bars[0].width = 8e-3 * p[0]; });
  CHECK(refusal(broader, box).find("width, direction or length of a bar") != std::string::npos);

  ChangedPlate held(carved_top(false), [](std::span<const double> p, Model& model)
                    { model.supports = {{.group = p[0] > 1.0 ? "x-" : "x+", .support = EdgeSupport::clamped}}; });
  CHECK(refusal(held, box).find("supports change") != std::string::npos);

  Model heavy = carved_top(false);
  heavy.masses = {{.at = {0.0, 0.0}, .mass = 5e-3}};
  ChangedPlate shifted(heavy, [](std::span<const double> p, Model& model) { model.masses[0].at.x() = 0.01 * p[0]; });
  CHECK(refusal(shifted, box).find("place of a point mass") != std::string::npos);

  ChangedPlate airy(carved_top(false),
                    [](std::span<const double> p, Model& model) { model.air_density = p[0] > 1.0 ? 1.2 : 0.0; });
  CHECK(refusal(airy, box).find("air around the plate") != std::string::npos);
}
