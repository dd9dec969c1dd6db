// SPDX-License-Identifier: MPL-2.0
#include "parts.h"

namespace plate
{
namespace
{

/// Wood from the handbook's ratios to E_L.
struct WoodRatios
{
  double bending_modulus;       ///< static bending at 12 % moisture [Pa]
  double specific_gravity;      ///< oven-dry mass over volume at 12 % moisture [-]
  double ER, ET, GLR, GLT, GRT; ///< over E_L [-]
  double nuLR, nuLT, nuRT;      ///< [-]
  double radial_swelling;       ///< dimensional change in R per fraction of moisture [-]
  double green_ratio;           ///< bending modulus at 12 % over that of green wood [-]
  double intersection;          ///< moisture content M_p [-]
};

/// Small clear specimens at 12 % moisture.
struct WoodStrength
{
  double rupture;            ///< modulus of rupture: stands in for tension along the grain, as the handbook says [Pa]
  double compression_along;  ///< [Pa]
  double tension_across;     ///< [Pa]
  double compression_across; ///< at the limit of proportionality [Pa]
  double shear_along;        ///< [Pa]
};

// Losses of tone wood: common practice.
constexpr LossFactors softwood_loss = {.E1 = 0.007, .E2 = 0.020, .E3 = 0.020, .G12 = 0.016, .G13 = 0.016, .G23 = 0.020};
constexpr LossFactors hardwood_loss = {.E1 = 0.011, .E2 = 0.022, .E3 = 0.022, .G12 = 0.020, .G13 = 0.020, .G23 = 0.022};

Material wood(const char* name, const WoodRatios& w, const WoodStrength& s, const LossFactors& loss)
{
  constexpr double rolling_shear = 0.2; // of the shear along the grain: 0.18 to 0.28 (handbook, ch. 5, from memory)
  // The bending test of the handbook loses about a tenth of the stiffness to shear deflection (handbook, ch. 5).
  const double EL = 1.1 * w.bending_modulus;
  constexpr double moisture = 0.12;
  // Along the grain wood swells by about 0.2 % from dry to saturated and expands by 3 to 4.5e-6/K; across, its
  // expansion grows with density (handbook, ch. 4, from memory).
  const double radial_expansion = (32.4 * w.specific_gravity + 9.9) * 1e-6;
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
          .loss = loss,
          .thermal = Expansion{.along = 4e-6, .across = radial_expansion},
          .swelling = Expansion{.along = 0.007, .across = w.radial_swelling},
          .wood = true,
          .strength = Strength{.Xt = s.rupture,
                               .Xc = s.compression_along,
                               .Yt = s.tension_across,
                               .Yc = s.compression_across,
                               .S = s.shear_along},
          .through_strength = ThroughStrength{.S13 = s.shear_along, .S23 = rolling_shear * s.shear_along},
          .moisture = MoistureData{.content = moisture, .intersection = w.intersection, .green_ratio = w.green_ratio}};
}

Material sitka_spruce()
{
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
               .nuRT = 0.435,
               .radial_swelling = 0.148,
               .green_ratio = 9.9 / 7.9,
               .intersection = 0.27},
              {.rupture = 65e6,
               .compression_along = 35.7e6,
               .tension_across = 2.6e6,
               .compression_across = 3.0e6,
               .shear_along = 6.7e6},
              softwood_loss);
}

Material engelmann_spruce()
{
  return wood("engelmann_spruce",
              {.bending_modulus = 8.9e9,
               .specific_gravity = 0.35,
               .ER = 0.128,
               .ET = 0.059,
               .GLR = 0.124,
               .GLT = 0.120,
               .GRT = 0.010,
               .nuLR = 0.422,
               .nuLT = 0.462,
               .nuRT = 0.530,
               .radial_swelling = 0.130,
               .green_ratio = 8.9 / 7.1,
               .intersection = 0.25},
              {.rupture = 64e6,
               .compression_along = 30.9e6,
               .tension_across = 2.4e6,
               .compression_across = 2.8e6,
               .shear_along = 8.3e6},
              softwood_loss);
}

Material norway_spruce()
{
  // Constants of one paper instead of ratios; its moisture behaviour is taken from Engelmann spruce.
  Material m = engelmann_spruce();
  m.name = "norway_spruce";
  m.elastic = {.E1 = 10.9e9,
               .E2 = 0.64e9,
               .E3 = 0.42e9,
               .G12 = 0.58e9,
               .G13 = 0.59e9,
               .G23 = 0.026e9,
               .nu12 = 0.39,
               .nu13 = 0.49,
               .nu23 = 0.64};
  m.density = 390.0;
  return m;
}

Material sugar_maple()
{
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
               .nuRT = 0.774,
               .radial_swelling = 0.165,
               .green_ratio = 12.6 / 10.7,
               .intersection = 0.25},
              {.rupture = 109e6,
               .compression_along = 54e6,
               .tension_across = 3.7e6,
               .compression_across = 10.1e6,
               .shear_along = 16.1e6},
              hardwood_loss);
}

Material red_maple()
{
  return wood("red_maple",
              {.bending_modulus = 11.3e9,
               .specific_gravity = 0.54,
               .ER = 0.140,
               .ET = 0.067,
               .GLR = 0.133,
               .GLT = 0.074,
               .GRT = 0.02,
               .nuLR = 0.434,
               .nuLT = 0.509,
               .nuRT = 0.762,
               .radial_swelling = 0.137,
               .green_ratio = 11.3 / 9.6,
               .intersection = 0.25},
              {.rupture = 92e6,
               .compression_along = 45.1e6,
               .tension_across = 3.7e6,
               .compression_across = 6.9e6,
               .shear_along = 12.8e6},
              hardwood_loss);
}

} // namespace

std::vector<LibraryMaterial> library_woods()
{
  return {
      {sitka_spruce(), "Sitka spruce, quarter-sawn: tops, bars, soundposts",
       "published: Wood Handbook, FPL-GTR-282, tables 5-1, 5-2, 5-3a, 5-13, 13-5; green modulus from memory; losses "
       "common practice",
       "from memory: Wood Handbook, table 5-3a"},
      {engelmann_spruce(), "Engelmann spruce: light tops",
       "published: Wood Handbook, tables 5-3a, 13-5; ratios of tables 5-1, 5-2 from memory; losses common practice",
       "published: Wood Handbook, table 5-3a"},
      {norway_spruce(), "Norway spruce (Picea abies)",
       "published: Hearmon 1948 as quoted by later authors; moisture and expansion assumed as Engelmann spruce; "
       "losses common practice",
       "assumed as Engelmann spruce (Wood Handbook, table 5-3a)"},
      {sugar_maple(), "sugar maple: backs, ribs",
       "published: Wood Handbook, tables 5-1, 5-2, 5-3a, 13-5; G_RT never measured there, assumed 0.02 E_L; losses "
       "common practice",
       "published: Wood Handbook, table 5-3a; tension across, not given there, as bigleaf maple (from memory)"},
      {red_maple(), "red maple: lighter backs, ribs",
       "from memory: Wood Handbook, tables 5-1, 5-2, 5-3a; swelling published (table 13-5); G_RT assumed 0.02 E_L; "
       "losses common practice",
       "from memory: Wood Handbook, table 5-3a; tension across as bigleaf maple"}};
}

} // namespace plate
