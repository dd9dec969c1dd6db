// SPDX-License-Identifier: MPL-2.0
#include "parts.h"

namespace plate
{
namespace
{

/// In-plane constants of a ply; across its fibres it is the same in all directions.
struct Unidirectional
{
  double E1, E2, G12, nu12; ///< [Pa], [-]
};

OrthotropicElastic unidirectional(const Unidirectional& u)
{
  constexpr double nu23 = 0.45; // assumed: 0.40 to 0.45 for fibre in epoxy
  return {.E1 = u.E1,
          .E2 = u.E2,
          .E3 = u.E2,
          .G12 = u.G12,
          .G13 = u.G12,
          .G23 = u.E2 / (2.0 * (1.0 + nu23)),
          .nu12 = u.nu12,
          .nu13 = u.nu12,
          .nu23 = nu23};
}

/// A balanced weave: as stiff across as along.
struct Cloth
{
  double E, E3, G12, G13, nu12; ///< [Pa], [-]
};

OrthotropicElastic cloth(const Cloth& c)
{
  constexpr double nu13 = 0.3; // assumed
  return {.E1 = c.E,
          .E2 = c.E,
          .E3 = c.E3,
          .G12 = c.G12,
          .G13 = c.G13,
          .G23 = c.G13,
          .nu12 = c.nu12,
          .nu13 = nu13,
          .nu23 = nu13};
}

/// Losses: along the fibre, across it, in shear.
LossFactors losses(double along, double across, double shear)
{
  return {.E1 = along, .E2 = across, .E3 = across, .G12 = shear, .G13 = shear, .G23 = shear};
}

LossFactors cloth_losses(double along, double shear)
{
  return {.E1 = along, .E2 = along, .E3 = shear, .G12 = shear, .G13 = shear, .G23 = shear};
}

} // namespace

std::vector<LibraryMaterial> library_plies()
{
  // Moisture uptake of epoxy swells a ply across its fibres by about 0.6 of the mass taken up; along them the fibres
  // hold it.
  constexpr Expansion resin_swelling = {.along = 0.0, .across = 0.6};
  constexpr Expansion cloth_swelling = {.along = 0.05, .across = 0.05};
  return {
      {{.name = "carbon_ud",
        .elastic = unidirectional({.E1 = 135e9, .E2 = 9.0e9, .G12 = 4.5e9, .nu12 = 0.30}),
        .density = 1550.0,
        .loss = losses(0.002, 0.009, 0.013),
        .thermal = Expansion{.along = 0.0, .across = 28e-6},
        .swelling = resin_swelling,
        .strength = Strength{.Xt = 1500e6, .Xc = 1500e6, .Yt = 40e6, .Yc = 246e6, .S = 68e6},
        .through_strength = ThroughStrength{.S13 = 68e6, .S23 = 50e6}},
       "standard-modulus carbon in epoxy, unidirectional, fibre volume about 0.55",
       "common practice; nu23 assumed",
       "published: Tsai and Hahn 1980, as quoted by later authors, for a ply of fibre volume 0.70; through the ply "
       "assumed"},
      {{.name = "carbon_cloth",
        .elastic = cloth({.E = 58e9, .E3 = 8.5e9, .G12 = 4.2e9, .G13 = 3.2e9, .nu12 = 0.05}),
        .density = 1500.0,
        .loss = cloth_losses(0.003, 0.013),
        .thermal = Expansion{.along = 3e-6, .across = 3e-6},
        .swelling = cloth_swelling,
        .strength = Strength{.Xt = 600e6, .Xc = 550e6, .Yt = 600e6, .Yc = 550e6, .S = 90e6},
        .through_strength = ThroughStrength{.S13 = 60e6, .S23 = 60e6}},
       "balanced cloth of standard-modulus carbon in epoxy, fibre volume about 0.50",
       "common practice; constants through the ply assumed",
       "common practice; through the ply assumed"},
      {{.name = "flax_ud",
        .elastic = unidirectional({.E1 = 30e9, .E2 = 4.5e9, .G12 = 2.2e9, .nu12 = 0.30}),
        .density = 1300.0,
        .loss = losses(0.012, 0.018, 0.020),
        .thermal = Expansion{.along = 0.0, .across = 60e-6},
        .swelling = Expansion{.along = 0.01, .across = 1.0},
        .strength = Strength{.Xt = 350e6, .Xc = 150e6, .Yt = 25e6, .Yc = 100e6, .S = 40e6},
        .through_strength = ThroughStrength{.S13 = 25e6, .S23 = 20e6}},
       "flax in epoxy, unidirectional, pressed, fibre volume about 0.45; hand lay-up gives less",
       "common practice; nu23 and expansions assumed",
       "published: Baley 2012, as quoted by later authors; through the ply assumed"},
      {{.name = "flax_cloth",
        .elastic = cloth({.E = 13e9, .E3 = 4.5e9, .G12 = 2.0e9, .G13 = 1.8e9, .nu12 = 0.10}),
        .density = 1280.0,
        .loss = cloth_losses(0.014, 0.022),
        .thermal = Expansion{.along = 15e-6, .across = 15e-6},
        .swelling = Expansion{.along = 0.1, .across = 0.1},
        .strength = Strength{.Xt = 110e6, .Xc = 90e6, .Yt = 110e6, .Yc = 90e6, .S = 35e6},
        .through_strength = ThroughStrength{.S13 = 20e6, .S23 = 20e6}},
       "balanced cloth of flax in epoxy, pressed",
       "common practice; constants through the ply and expansions assumed",
       "common practice; through the ply assumed"},
      {{.name = "glass_ud",
        .elastic = unidirectional({.E1 = 39e9, .E2 = 8.6e9, .G12 = 3.8e9, .nu12 = 0.28}),
        .density = 1950.0,
        .loss = losses(0.003, 0.010, 0.013),
        .thermal = Expansion{.along = 7e-6, .across = 21e-6},
        .swelling = resin_swelling,
        .strength = Strength{.Xt = 1000e6, .Xc = 700e6, .Yt = 40e6, .Yc = 120e6, .S = 70e6},
        .through_strength = ThroughStrength{.S13 = 60e6, .S23 = 45e6}},
       "E-glass in epoxy, unidirectional, fibre volume about 0.55",
       "published: Daniel & Ishai, Engineering Mechanics of Composite Materials, app. A (moduli, as quoted by later "
       "authors); the rest common practice; nu23 assumed",
       "published: Daniel and Ishai, app. A, as quoted by later authors; through the ply assumed"},
      {{.name = "glass_cloth",
        .elastic = cloth({.E = 22e9, .E3 = 8.0e9, .G12 = 3.8e9, .G13 = 3.0e9, .nu12 = 0.13}),
        .density = 1850.0,
        .loss = cloth_losses(0.005, 0.013),
        .thermal = Expansion{.along = 13e-6, .across = 13e-6},
        .swelling = cloth_swelling,
        .strength = Strength{.Xt = 440e6, .Xc = 425e6, .Yt = 440e6, .Yc = 425e6, .S = 40e6},
        .through_strength = ThroughStrength{.S13 = 40e6, .S23 = 40e6}},
       "balanced cloth of E-glass in epoxy, fibre volume about 0.45",
       "common practice; constants through the ply assumed",
       "common practice; through the ply assumed"},
  };
}

} // namespace plate
