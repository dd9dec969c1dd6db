// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "sample_plate.h"

#include <plate/meshes/polar_picture.h>
#include <plate/meshes/side_by_side_picture.h>
#include <plate/meshes/sweep_picture.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace plate::test
{

/// An invented mode; numbers 1, 2 and 5 have trade names.
inline ModeShapePicture sample_mode(const ShellMesh& mesh, int number)
{
  return {.number = number,
          .frequency_hz = 61.2 * number,
          .name = number == 1 || number == 2 || number == 5 ? "M" + std::to_string(number) : "",
          .loss = 0.0123,
          .normal_displacement =
              at_nodes(mesh, [&](double x, double y) { return std::cos(9.0 * number * x) * (y + 0.01); })};
}

inline std::vector<ModeShapePicture> sample_modes(const ShellMesh& mesh, int count)
{
  std::vector<ModeShapePicture> modes;
  for (int number = 1; number <= count; ++number)
    modes.push_back(sample_mode(mesh, number));
  return modes;
}

inline SweepCurves sample_sweep(const ShellMesh& mesh)
{
  SweepCurves sweep{
      .title = "Invented", .key = "layup.scale", .values = {0.8, 1.0, 1.2}, .tracks = {}, .mass = {0.06, 0.07, 0.08}};
  for (int k = 1; k <= 3; ++k)
    sweep.tracks.push_back({.name = k == 1 ? "M1" : "mode " + std::to_string(k),
                            .emphasised = k == 1,
                            .frequency_hz = {60.0 * k, 65.0 * k, 70.0 * k},
                            .first_shape = sample_mode(mesh, k).normal_displacement,
                            .last_shape = sample_mode(mesh, k + 1).normal_displacement});
  return sweep;
}

/// E over direction of an invented sheet: 10 along and 1 across, by a formula that only has to look right.
inline PolarPicture sample_polar()
{
  constexpr int count = 72;
  PolarPicture picture{.title = "Invented layup",
                       .panels = {{.heading = "stretching", .unit = "GPa", .curves = {}},
                                  {.heading = "bending", .unit = "N m", .curves = {}}}};
  for (PolarPanel& panel : picture.panels)
    for (const std::string label : {"laminate", "spruce"})
    {
      PolarCurve curve{.label = label, .values = {}};
      for (int i = 0; i < count; ++i)
      {
        const double c = std::cos(2.0 * std::numbers::pi * i / count);
        curve.values.push_back((label == "spruce" ? 1.0 : 4.0) + 9.0 * c * c * c * c);
      }
      panel.curves.push_back(curve);
    }
  return picture;
}

} // namespace plate::test
