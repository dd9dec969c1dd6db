// SPDX-License-Identifier: MPL-2.0
#include "parts.h"

namespace plate
{
namespace
{

/// An isotropic foam from its two moduli; Poisson's ratio follows.
OrthotropicElastic foam(double E, double G)
{
  const double nu = 0.5 * E / G - 1.0;
  return {.E1 = E, .E2 = E, .E3 = E, .G12 = G, .G13 = G, .G23 = G, .nu12 = nu, .nu13 = nu, .nu23 = nu};
}

constexpr LossFactors core_loss = {.E1 = 0.02, .E2 = 0.02, .E3 = 0.02, .G12 = 0.02, .G13 = 0.02, .G23 = 0.02};

} // namespace

std::vector<LibraryMaterial> library_cores()
{
  return {
      // End grain: the grain runs through the plate, along 3. Density and shear modulus at the light end of what
      // suppliers state, moduli in the plane of the order of 1/50 of E3.
      {{.name = "balsa",
        .elastic = {.E1 = 60e6,
                    .E2 = 60e6,
                    .E3 = 3.0e9,
                    .G12 = 30e6,
                    .G13 = 110e6,
                    .G23 = 110e6,
                    .nu12 = 0.3,
                    .nu13 = 0.0005,
                    .nu23 = 0.0005},
        .density = 100.0,
        .loss = core_loss,
        .core = true,
        .thermal = Expansion{.along = 15e-6, .across = 15e-6},
        .swelling = Expansion{.along = 0.18, .across = 0.18},
        .through_strength = ThroughStrength{.S13 = 1.0e6, .S23 = 1.0e6}},
       "end-grain balsa, light; resin taken up adds 0.1 to 0.3 kg/m2",
       "common practice; swelling across: Wood Handbook, table 13-5 (mean of radial and tangential)",
       "common practice: 1.0 to 1.8 MPa at 100 to 150 kg/m3"},
      {{.name = "imide_foam",
        .elastic = foam(80e6, 31e6),
        .density = 60.0,
        .loss = core_loss,
        .core = true,
        .thermal = Expansion{.along = 33e-6, .across = 33e-6},
        .swelling = Expansion{.along = 0.05, .across = 0.05},
        .through_strength = ThroughStrength{.S13 = 1.0e6, .S23 = 1.0e6}},
       "polymethacrylimide foam, closed cells",
       "from memory: between suppliers' 51 and 71 kg/m3; shear modulus raised to that of an isotropic solid; swelling "
       "assumed",
       "from memory: between suppliers' 51 and 71 kg/m3"},
      {{.name = "vinyl_foam",
        .elastic = foam(85e6, 31e6),
        .density = 80.0,
        .loss = core_loss,
        .core = true,
        .thermal = Expansion{.along = 40e-6, .across = 40e-6},
        .swelling = Expansion{.along = 0.05, .across = 0.05},
        .through_strength = ThroughStrength{.S13 = 1.1e6, .S23 = 1.1e6}},
       "cross-linked vinyl-chloride foam, closed cells",
       "from memory: suppliers' 80 kg/m3; swelling assumed",
       "from memory: suppliers' 80 kg/m3"},
      // The cells carry next to nothing in the plane.
      {{.name = "aramid_honeycomb",
        .elastic = {.E1 = 1e6,
                    .E2 = 1e6,
                    .E3 = 138e6,
                    .G12 = 0.5e6,
                    .G13 = 45e6,
                    .G23 = 25e6,
                    .nu12 = 0.3,
                    .nu13 = 0.002,
                    .nu23 = 0.002},
        .density = 48.0,
        .loss = core_loss,
        .core = true,
        .thermal = Expansion{.along = 35e-6, .across = 35e-6},
        .swelling = Expansion{.along = 0.1, .across = 0.1},
        .through_strength = ThroughStrength{.S13 = 1.2e6, .S23 = 0.7e6}},
       "aramid-paper honeycomb; direction 1 is its ribbon",
       "from memory: suppliers' 48 kg/m3; moduli in the plane, expansion and swelling assumed",
       "from memory: suppliers' 48 kg/m3"},
  };
}

} // namespace plate
