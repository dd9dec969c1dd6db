// SPDX-License-Identifier: MPL-2.0
#include "laminate_files.h"

#include "laminate_report.h"

#include <plate/meshes/polar_picture.h>

namespace plate
{
namespace
{

constexpr double gigapascals = 1e-9; // per Pa

PolarPicture polar_picture(const LaminateResult& result)
{
  PolarCurve modulus = {.label = "strip cut in this direction", .values = {}};
  PolarCurve bending = modulus;
  for (const StripStiffness& strip : result.polar)
  {
    modulus.values.push_back(strip.modulus * gigapascals);
    bending.values.push_back(strip.bending);
  }
  return {.title = result.title,
          .panels = {{.heading = "stretching, E", .unit = "GPa", .curves = {modulus}},
                     {.heading = "bending, D", .unit = "N m", .curves = {bending}}}};
}

} // namespace

void write_laminate_files(const OutputFolder& folder, const LaminateResult& result)
{
  folder.write("laminate.json", laminate_json(result));
  folder.write("polar.csv", polar_csv(result));
  const PolarPicture picture = polar_picture(result);
  write_polar_picture(folder.file("polar.png"), picture);
  write_polar_picture(folder.file("polar.svg"), picture);
}

} // namespace plate
