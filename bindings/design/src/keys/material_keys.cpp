// SPDX-License-Identifier: MPL-2.0
#include "declarations.h"

namespace plate::key_declarations
{

namespace
{

constexpr KeyRange modulus = above(0.0, 1500.0);
constexpr KeyRange poisson = between(-1.0, 10.0);

constexpr std::string_view own_default = "from the other constants, see material.*.E3";

} // namespace

std::vector<Key> material_keys()
{
  return {
      {.name = "material.*.E1",
       .kind = KeyKind::number,
       .unit = gpa,
       .range = modulus,
       .help = "Young's modulus along the grain or the fibre. A material named like a built-in one begins with that "
               "one's constants."},
      {.name = "material.*.E2",
       .kind = KeyKind::number,
       .unit = gpa,
       .range = modulus,
       .help = "Young's modulus across (radial in wood)."},
      {.name = "material.*.E3",
       .kind = KeyKind::number,
       .unit = gpa,
       .range = modulus,
       .default_text = "E3 = E2, G13 = G12, nu13 = nu12, nu23 = 0.4, G23 = E2/(2 (1 + nu23)): the same in all "
                       "directions across the fibre",
       .help = "Young's modulus through the plate (tangential in quarter-sawn wood). E3, G13, G23, nu13 and nu23 are "
               "given together or not at all."},
      {.name = "material.*.G12",
       .kind = KeyKind::number,
       .unit = gpa,
       .range = modulus,
       .help = "Shear modulus in the plane of the plate."},
      {.name = "material.*.G13",
       .kind = KeyKind::number,
       .unit = gpa,
       .range = modulus,
       .default_text = own_default,
       .help = "Transverse shear modulus along."},
      {.name = "material.*.G23",
       .kind = KeyKind::number,
       .unit = gpa,
       .range = modulus,
       .default_text = own_default,
       .help = "Transverse shear modulus across (rolling shear in wood)."},
      {.name = "material.*.nu12",
       .kind = KeyKind::number,
       .unit = pure,
       .range = poisson,
       .help = "Major Poisson's ratio: contraction along 2 from stress along 1."},
      {.name = "material.*.nu13",
       .kind = KeyKind::number,
       .unit = pure,
       .range = poisson,
       .default_text = own_default,
       .help = "Contraction along 3 from stress along 1."},
      {.name = "material.*.nu23",
       .kind = KeyKind::number,
       .unit = pure,
       .range = poisson,
       .default_text = own_default,
       .help = "Contraction along 3 from stress along 2."},
      {.name = "material.*.density",
       .kind = KeyKind::number,
       .unit = kg_m3,
       .range = above(0.0, 25000.0),
       .help = "Density."},
      {.name = "material.*.loss",
       .kind = KeyKind::numbers,
       .unit = percent,
       .range = between(0.0, 100.0),
       .count = 6,
       .default_text = "0 for all",
       .help = "Loss factors of E1, E2, E3, G12, G13, G23."},
      {.name = "material.*.core",
       .kind = KeyKind::flag,
       .default_text = "false",
       .help = "Marks a core: layup.scale leaves it alone and layup.scale_core changes it."},
      {.name = "material.*.thickness",
       .kind = KeyKind::number,
       .unit = mm,
       .range = sheet,
       .default_text = "none",
       .help =
           "Thickness of one sheet, used where a ply of this material states none and where a laminate code names it."},
  };
}

} // namespace plate::key_declarations
