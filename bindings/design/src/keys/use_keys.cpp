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

      {.name = "mesh.size",
       .kind = KeyKind::number,
       .unit = mm,
       .range = above(0.0, 500.0),
       .default_text = "chosen from the plate's size",
       .help = "Length of the elements' edges away from holes and edges."},
  };
}

} // namespace plate::key_declarations
