// SPDX-License-Identifier: MPL-2.0
// Spruce and laminates as thin plates: computed much thinner than stated, since frequencies of thin plates are
// proportional to the thickness, so that shear has no part.
#include "modal_values.h"

#include <plate/validation/sample_models.h>

#include <utility>

namespace plate::validation
{
namespace
{

struct Plate
{
  double length; // [m]
  double width;  // [m]
  int cells_x;
  int cells_y;
};

constexpr Plate narrow = {0.35, 0.13, 34, 16};
constexpr Plate broad = {0.30, 0.20, 30, 20};

Model thin_model(const Plate& plate, const Laminate& laminate)
{
  const double strip = 1.2 * total_thickness(laminate);
  return plate_model(grid_mesh({.x = lines_with_strips(0.5 * plate.length, plate.cells_x, strip),
                                .y = lines_with_strips(0.5 * plate.width, plate.cells_y, strip),
                                .surface = flat(),
                                .thickness = total_thickness(laminate)}),
                     laminate);
}

CaseModel spruce(const std::string& name, const Plate& plate, double thickness, double degrees)
{
  constexpr double thinner = 30.0;
  return modes_of(
      name, [=] { return thin_model(plate, solid(quarter_cut_spruce(), thickness / thinner, degrees)); }, thinner);
}

CaseModel carbon(const std::string& name, const std::vector<double>& degrees)
{
  constexpr double thinner = 5.0;
  constexpr double ply = 0.125e-3; // [m]
  return modes_of(
      name, [=] { return thin_model(broad, stack(carbon_epoxy(), ply / thinner, degrees)); }, thinner);
}

CaseModel hinged_spruce(const std::string& name)
{
  constexpr double thinner = 30.0;
  const auto model = [=]
  {
    Model plate = thin_model(narrow, solid(quarter_cut_spruce(), 3e-3 / thinner));
    support_all_sides(plate, EdgeSupport::hinged);
    return plate;
  };
  return modes_of(name, model, thinner);
}

} // namespace

std::vector<CaseModel> orthotropic_plates()
{
  return {spruce("thin spruce 350 x 130", narrow, 3e-3, 0.0),
          spruce("thin spruce 300 x 200", broad, 2.5e-3, 0.0),
          spruce("thin spruce, grain at 15 degrees", narrow, 3e-3, 15.0),
          hinged_spruce("thin spruce 350 x 130, hinged"),
          carbon("thin carbon [0/90]s", {0, 90, 90, 0}),
          carbon("thin carbon [0/45/-45/90]s", {0, 45, -45, 90, 90, -45, 45, 0}),
          carbon("thin carbon [45/-45/-45/45]", {45, -45, -45, 45}),
          carbon("thin carbon [0_2/90]s", {0, 0, 90, 90, 0, 0}),
          carbon("thin carbon [0/60/-60]s", {0, 60, -60, -60, 60, 0})};
}

} // namespace plate::validation
