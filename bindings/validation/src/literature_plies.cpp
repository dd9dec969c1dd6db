// SPDX-License-Identifier: MPL-2.0
#include "literature_plies.h"

namespace plate::validation
{
namespace
{

Material pagano_core()
{
  constexpr double E2 = 1e9; // of the face ply
  return {.name = "core",
          .elastic = {.E1 = 0.04 * E2,
                      .E2 = 0.04 * E2,
                      .E3 = 0.5 * E2,
                      .G12 = 0.016 * E2,
                      .G13 = 0.06 * E2,
                      .G23 = 0.06 * E2,
                      .nu12 = 0.25,
                      .nu13 = 0.25 * 0.04 / 0.5, // from nu31 = 0.25
                      .nu23 = 0.25 * 0.04 / 0.5},
          .density = 1000.0};
}

} // namespace

Material pagano_ply()
{
  constexpr double E2 = 1e9;
  return {.name = "ply",
          .elastic = {.E1 = 25.0 * E2,
                      .E2 = E2,
                      .E3 = E2,
                      .G12 = 0.5 * E2,
                      .G13 = 0.5 * E2,
                      .G23 = 0.2 * E2,
                      .nu12 = 0.25,
                      .nu13 = 0.25,
                      .nu23 = 0.25},
          .density = 1000.0};
}

Laminate pagano_sandwich(double thickness)
{
  const Ply face = {.material = pagano_ply(), .thickness = 0.1 * thickness};
  return {{face, {.material = pagano_core(), .thickness = 0.8 * thickness}, face}};
}

} // namespace plate::validation
