// SPDX-License-Identifier: MPL-2.0
#include "declarations.h"

namespace plate::key_declarations
{

std::vector<Key> layup_keys()
{
  return {
      {.name = "layup.solid",
       .kind = KeyKind::text,
       .example = "\"spruce\"",
       .default_text = "none; one of solid, code, plies must be given",
       .help = "Material of a solid plate."},
      {.name = "layup.angle",
       .kind = KeyKind::number,
       .unit = degrees,
       .range = turn,
       .default_number = 0.0,
       .help = "Solid: direction of the grain from x, positive from x to y."},
      {.name = "layup.grain",
       .kind = KeyKind::choice,
       .choices = {"carved", "follows"},
       .default_text = "carved",
       .help = "Solid: carved keeps the axes of the board, follows takes those of the surface (bent or moulded wood)."},
      {.name = "layup.cure_temperature",
       .kind = KeyKind::number,
       .example = "80.0",
       .unit = celsius,
       .range = between(0.0, 400.0),
       .default_text = "none: no stress is left by the cure",
       .help = "Laminate: temperature of the cure. Stress that cooling to surroundings.temperature leaves in the plies "
               "is held fixed when plate load judges their strength; all plies need expansion."},
      {.name = "layup.code",
       .kind = KeyKind::text,
       .example = "\"[0/60/-60]s\"",
       .default_text = "none",
       .help =
           "Laminate code from inside to outside, e.g. [0/60/-60]s; names of materials stand for plies of their own."},
      {.name = "layup.ply.material",
       .kind = KeyKind::text,
       .example = "\"carbon_ud\"",
       .help = "Material of the plies that the code gives by angle."},
      {.name = "layup.ply.thickness",
       .kind = KeyKind::number,
       .example = "0.125",
       .unit = mm,
       .range = sheet,
       .default_text = "thickness of the material's sheet",
       .help = "Thickness of one such ply."},
      {.name = "layup.plies[].material",
       .kind = KeyKind::text,
       .example = "\"flax_ud\"",
       .help = "Material of a ply; plies are listed from inside to outside."},
      {.name = "layup.plies[].thickness",
       .kind = KeyKind::number,
       .example = "0.15",
       .unit = mm,
       .range = sheet,
       .default_text = "thickness of the material's sheet",
       .help = "Thickness of the ply."},
      {.name = "layup.plies[].angle",
       .kind = KeyKind::number,
       .unit = degrees,
       .range = turn,
       .default_number = 0.0,
       .help = "Direction of the fibre from x, positive from x to y seen from outside."},
      {.name = "layup.plies[].grain",
       .kind = KeyKind::choice,
       .choices = {"laid", "carved"},
       .default_text = "laid",
       .help = "laid follows the surface; carved keeps the axes of a board (a carved core under skins)."},
      {.name = "layup.plies[].angle_file",
       .kind = KeyKind::text,
       .example = "\"angles.csv\"",
       .default_text = "none",
       .help =
           "Points with columns x, y (mm) and angle (degrees): the direction that the ply really takes, e.g. draped, "
           "in place of its angle."},
      {.name = "layup.scale",
       .kind = KeyKind::number,
       .unit = pure,
       .range = between(0.01, 100.0),
       .default_number = 1.0,
       .help = "Factor on the thickness of every ply of the layup but cores, and on the thickness of a solid plate. "
               "Patches "
               "keep theirs."},
      {.name = "layup.scale_core",
       .kind = KeyKind::number,
       .unit = pure,
       .range = between(0.01, 100.0),
       .default_number = 1.0,
       .help = "Factor on the thickness of cores."},
  };
}

} // namespace plate::key_declarations
