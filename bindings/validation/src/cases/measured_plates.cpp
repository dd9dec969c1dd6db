// SPDX-License-Identifier: MPL-2.0
// Free spruce plates that were measured, with the constants identified on them.
#include "modal_values.h"

#include <plate/validation/sample_models.h>

#include <cmath>

namespace plate::validation
{
namespace
{

struct MeasuredPlate
{
  double length;    // [m]
  double width;     // [m]
  double thickness; // [m]
  Material spruce;
};

// Two Poisson ratios are not given there; they have no part in a plate.
MeasuredPlate plate_2R()
{
  return {.length = 0.580,
          .width = 0.217,
          .thickness = 4.7e-3,
          .spruce = {.name = "spruce 2R",
                     .elastic = {.E1 = 11.6e9,
                                 .E2 = 0.964e9,
                                 .E3 = 0.412e9,
                                 .G12 = 0.756e9,
                                 .G13 = 0.681e9,
                                 .G23 = 0.0293e9,
                                 .nu12 = 0.44,
                                 .nu13 = 0.47,
                                 .nu23 = 0.43},
                     .density = 427.0}};
}

MeasuredPlate plate_5R()
{
  return {.length = 0.5812,
          .width = 0.2174,
          .thickness = 5.0e-3,
          .spruce = {.name = "spruce 5R",
                     .elastic = {.E1 = 10.8e9,
                                 .E2 = 0.970e9,
                                 .E3 = 0.316e9,
                                 .G12 = 0.794e9,
                                 .G13 = 0.606e9,
                                 .G23 = 0.0358e9,
                                 .nu12 = 0.393,
                                 .nu13 = 0.47,
                                 .nu23 = 0.43},
                     .density = 416.0}};
}

Model free_plate(const MeasuredPlate& plate)
{
  const double strip = 1.2 * plate.thickness;
  return plate_model(grid_mesh({.x = lines_with_strips(0.5 * plate.length, 14, strip),
                                .y = lines_with_strips(0.5 * plate.width, 8, strip),
                                .surface = flat(),
                                .thickness = plate.thickness}),
                     solid(plate.spruce, plate.thickness));
}

/// The mean of the absolute differences stands first, the peaks follow.
CaseModel measured(const std::string& name, const MeasuredPlate& plate)
{
  const auto compute = [=](const ReferenceCase& reference)
  {
    ReferenceCase peaks = reference;
    peaks.values.erase(peaks.values.begin());
    Values values = modal_values(assemble(free_plate(plate)), peaks);
    double sum = 0.0;
    for (const ReferenceValue& peak : peaks.values)
      sum += std::abs(values.at(peak.quantity) / peak.value - 1.0);
    values[reference.values.front().quantity] = 100.0 * sum / static_cast<double>(peaks.values.size());
    return values;
  };
  return {.name = name, .compute = compute};
}

} // namespace

std::vector<CaseModel> measured_plates()
{
  return {modes_of("spruce plate 2R by a series", [] { return free_plate(plate_2R()); }),
          modes_of("spruce plate 5R by a series", [] { return free_plate(plate_5R()); }),
          measured("measured spruce plate 2R", plate_2R()), measured("measured spruce plate 5R", plate_5R())};
}

} // namespace plate::validation
