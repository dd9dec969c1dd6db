// SPDX-License-Identifier: MPL-2.0
#include <plate/laminates/laminate.h>

#include <plate/core/error.h>

#include <cmath>

namespace plate
{

double total_thickness(const Laminate& laminate)
{
  double sum = 0.0;
  for (const Ply& ply : laminate.plies)
    sum += ply.thickness;
  return sum;
}

double areal_mass(const Laminate& laminate)
{
  double sum = 0.0;
  for (const Ply& ply : laminate.plies)
    sum += ply.thickness * ply.material.density;
  return sum;
}

void check_laminate(const Laminate& laminate)
{
  if (laminate.plies.empty())
    throw InvalidInput("laminate: needs at least one ply; got none");
  int number = 0;
  for (const Ply& ply : laminate.plies)
  {
    ++number;
    const auto where = [&] { return message("ply ", number, " (", ply.material.name, "): "); };
    if (!(ply.thickness > 0.0 && std::isfinite(ply.thickness)))
      throw InvalidInput(message(where(), "thickness must be positive and finite; got ", ply.thickness, " m"));
    if (!std::isfinite(ply.angle.in_radians()))
      throw InvalidInput(message(where(), "angle must be finite"));
    if (!(ply.material.density > 0.0 && std::isfinite(ply.material.density)))
      throw InvalidInput(message(where(), "density must be positive and finite; got ", ply.material.density, " kg/m3"));
    try
    {
      check_elastic(ply.material.elastic);
    }
    catch (const InvalidInput& error)
    {
      throw InvalidInput(where() + error.what());
    }
  }
}

} // namespace plate
