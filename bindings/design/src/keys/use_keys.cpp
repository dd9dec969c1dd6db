// SPDX-License-Identifier: MPL-2.0
#include "declarations.h"

namespace plate::key_declarations
{

std::vector<Key> use_keys()
{
  return {
      {.name = "support.edge",
       .kind = KeyKind::choice,
       .choices = {"free", "rest", "hinged", "clamped"},
       .default_text = "free",
       .help = "Support of the outline: free, rest (z held), hinged (x, y, z held), clamped."},
      {.name = "support.edges",
       .kind = KeyKind::choices,
       .count = 4,
       .choices = {"free", "rest", "hinged", "clamped"},
       .default_text = "none",
       .help = "Rectangle: support of the sides x-, x+, y-, y+."},

      {.name = "mass[].at",
       .kind = KeyKind::numbers,
       .example = "[40.0, 30.0]",
       .unit = mm,
       .range = place,
       .count = 2,
       .help = "x and y of a body stuck on the plate, e.g. a ball of clay. It moves with the mid-surface and has no "
               "extent of its own."},
      {.name = "mass[].grams",
       .kind = KeyKind::number,
       .example = "5.0",
       .unit = grams,
       .range = above(0.0, 10000.0),
       .help = "Its mass."},

      {.name = "surroundings.air",
       .kind = KeyKind::choice,
       .choices = {"none", "free"},
       .default_text = "none",
       .help = "none: frequencies in vacuo; free: with the mass of the air that moves with both faces of a plate "
               "with free edges and nothing near it, 1 to 4 % lower."},
      {.name = "surroundings.temperature",
       .kind = KeyKind::number,
       .unit = celsius,
       .range = between(0.0, 100.0),
       .default_number = 20.0,
       .help = "Temperature of the air; its density follows (dry, at 101325 Pa)."},
      {.name = "surroundings.humidity",
       .kind = KeyKind::number,
       .example = "50.0",
       .unit = percent,
       .range = between(0.0, 99.0),
       .default_text = "none: constants hold as they are given",
       .help =
           "Relative humidity of the air in which the plate has come to rest. Where it is given, the moduli and the "
           "density of materials with moisture data are taken at the moisture content that wood has there; "
           "dimensions stay."},

      {.name = "mesh.size",
       .kind = KeyKind::number,
       .example = "6.0",
       .unit = mm,
       .range = between(0.01, 500.0),
       .default_text = "chosen from the plate's size",
       .help = "Length of the elements' edges away from holes and edges."},
  };
}

} // namespace plate::key_declarations
