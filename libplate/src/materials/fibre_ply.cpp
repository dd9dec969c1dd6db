// SPDX-License-Identifier: MPL-2.0
#include <plate/materials/fibre_ply.h>

namespace plate
{

double ply_thickness(const FibrePly& ply)
{
  return ply.fibre_weight / (ply.fibre_density * ply.fibre_volume);
}

double ply_density(const FibrePly& ply)
{
  return ply.fibre_density * ply.fibre_volume + ply.resin_density * (1.0 - ply.fibre_volume);
}

} // namespace plate
