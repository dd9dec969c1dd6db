// SPDX-License-Identifier: MPL-2.0
#include <plate/materials/library.h>

#include <algorithm>
#include <array>

namespace plate
{
namespace
{

// Marks used below. [handbook]: U.S. Forest Products Laboratory, Wood Handbook, FPL-GTR-282 (2021), tables 5-1
// (ratios), 5-2 (Poisson's ratios) and 5-3a (modulus of elasticity and specific gravity at 12 % moisture). [common
// practice]: typical of the trade, no single source; good to begin with, never to check against. [assumed]: not
// measured for this material; the assumption is stated.

/// Wood from the handbook's ratios to E_L.
struct WoodRatios
{
  double bending_modulus;       ///< static bending at 12 % moisture [Pa]
  double specific_gravity;      ///< oven-dry mass over volume at 12 % moisture [-]
  double ER, ET, GLR, GLT, GRT; ///< over E_L [-]
  double nuLR, nuLT, nuRT;      ///< [-]
};

Material wood(const char* name, const WoodRatios& w, const LossFactors& loss)
{
  // The bending test of the handbook loses about a tenth of the stiffness to shear deflection (handbook, ch. 5).
  const double EL = 1.1 * w.bending_modulus;
  constexpr double moisture = 0.12;
  return {.name = name,
          .elastic = {.E1 = EL,
                      .E2 = w.ER * EL,
                      .E3 = w.ET * EL,
                      .G12 = w.GLR * EL,
                      .G13 = w.GLT * EL,
                      .G23 = w.GRT * EL,
                      .nu12 = w.nuLR,
                      .nu13 = w.nuLT,
                      .nu23 = w.nuRT},
          .density = 1000.0 * w.specific_gravity * (1.0 + moisture),
          .loss = loss};
}

Material spruce()
{
  // Sitka spruce, all constants [handbook]: E_L 10.89 GPa, 403 kg/m3. Losses [common practice] for tone wood.
  return wood("spruce",
              {.bending_modulus = 9.9e9,
               .specific_gravity = 0.36,
               .ER = 0.078,
               .ET = 0.043,
               .GLR = 0.064,
               .GLT = 0.061,
               .GRT = 0.003,
               .nuLR = 0.372,
               .nuLT = 0.467,
               .nuRT = 0.435},
              {.E1 = 0.007, .E2 = 0.020, .E3 = 0.020, .G12 = 0.016, .G13 = 0.016, .G23 = 0.020});
}

Material maple()
{
  // Sugar maple [handbook], but G_RT was never measured there: [assumed] 0.02 E_L, the order of other dense hardwoods.
  // Losses [common practice].
  return wood("maple",
              {.bending_modulus = 12.6e9,
               .specific_gravity = 0.63,
               .ER = 0.132,
               .ET = 0.065,
               .GLR = 0.111,
               .GLT = 0.063,
               .GRT = 0.02,
               .nuLR = 0.424,
               .nuLT = 0.476,
               .nuRT = 0.774},
              {.E1 = 0.011, .E2 = 0.022, .E3 = 0.022, .G12 = 0.020, .G13 = 0.020, .G23 = 0.022});
}

/// Shear modulus of the plane of isotropy across the fibres [Pa].
constexpr double across_fibres(double E2, double nu23)
{
  return E2 / (2.0 * (1.0 + nu23));
}

Material carbon_ud()
{
  // Standard-modulus carbon in epoxy, fibre volume about 0.55 [common practice]. Transversely isotropic, nu23
  // [assumed].
  return {.name = "carbon_ud",
          .elastic = {.E1 = 135e9,
                      .E2 = 9.0e9,
                      .E3 = 9.0e9,
                      .G12 = 4.5e9,
                      .G13 = 4.5e9,
                      .G23 = across_fibres(9.0e9, 0.45),
                      .nu12 = 0.30,
                      .nu13 = 0.30,
                      .nu23 = 0.45},
          .density = 1550.0,
          .loss = {.E1 = 0.002, .E2 = 0.009, .E3 = 0.009, .G12 = 0.013, .G13 = 0.013, .G23 = 0.013}};
}

Material flax_ud()
{
  // Flax in epoxy, pressed, fibre volume about 0.45 [common practice]; hand lay-up gives less. nu23 [assumed].
  return {.name = "flax_ud",
          .elastic = {.E1 = 30e9,
                      .E2 = 4.5e9,
                      .E3 = 4.5e9,
                      .G12 = 2.2e9,
                      .G13 = 2.2e9,
                      .G23 = across_fibres(4.5e9, 0.45),
                      .nu12 = 0.30,
                      .nu13 = 0.30,
                      .nu23 = 0.45},
          .density = 1300.0,
          .loss = {.E1 = 0.012, .E2 = 0.018, .E3 = 0.018, .G12 = 0.020, .G13 = 0.020, .G23 = 0.020}};
}

Material balsa()
{
  // End-grain core: the grain runs through the plate, along 3. Density and shear modulus at the light end of what
  // suppliers state, moduli in the plane of the order of 1/50 of E3 [common practice].
  return {.name = "balsa",
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
          .loss = {.E1 = 0.02, .E2 = 0.02, .E3 = 0.02, .G12 = 0.02, .G13 = 0.02, .G23 = 0.02},
          .core = true};
}

} // namespace

std::span<const Material> material_library()
{
  static const std::array<Material, 5> library = {spruce(), maple(), carbon_ud(), flax_ud(), balsa()};
  return library;
}

const Material* find_material(std::string_view name)
{
  const std::span<const Material> library = material_library();
  const auto found = std::find_if(library.begin(), library.end(), [&](const Material& m) { return m.name == name; });
  return found == library.end() ? nullptr : &*found;
}

} // namespace plate
