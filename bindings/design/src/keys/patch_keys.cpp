// SPDX-License-Identifier: MPL-2.0
#include "declarations.h"

namespace plate::key_declarations
{

std::vector<Key> patch_keys()
{
  return {
      {.name = "patch[].side",
       .kind = KeyKind::choice,
       .choices = {"inside", "outside"},
       .default_text = "inside",
       .help = "Face of the plate on which the patch lies. Patches on one side lie on each other in the order of the "
               "file; a bass bar is glued onto them."},
      {.name = "patch[].shape",
       .kind = KeyKind::choice,
       .choices = {"ellipse", "polygon"},
       .help =
           "Shape of the patch in planform. It may reach over the edge of the plate or a hole: what lies outside is "
           "cut off."},
      {.name = "patch[].centre",
       .kind = KeyKind::numbers,
       .example = "[0.0, 0.0]",
       .unit = mm,
       .range = place,
       .count = 2,
       .only_with = "ellipse",
       .help = "x and y of the ellipse's middle."},
      {.name = "patch[].axes",
       .kind = KeyKind::numbers,
       .example = "[120.0, 60.0]",
       .unit = mm,
       .range = above(0.0, 6000.0),
       .count = 2,
       .only_with = "ellipse",
       .help = "Full lengths of the ellipse's axes, the first along x before it is turned."},
      {.name = "patch[].angle",
       .kind = KeyKind::number,
       .unit = degrees,
       .range = turn,
       .only_with = "ellipse",
       .default_number = 0.0,
       .help = "Turns the ellipse, positive from x to y."},
      {.name = "patch[].points",
       .kind = KeyKind::points,
       .example = "[[-60.0, 20.0], [60.0, 20.0], [0.0, 50.0]]",
       .unit = mm,
       .range = place,
       .count = 3,
       .only_with = "polygon",
       .help = "Corners of the polygon in order, e.g. [[-60, 20], [60, 20], [0, 50]]."},
      {.name = "patch[].plies[].material",
       .kind = KeyKind::text,
       .example = "\"carbon_ud\"",
       .help = "Material of a ply; plies are listed from inside to outside."},
      {.name = "patch[].plies[].thickness",
       .kind = KeyKind::number,
       .example = "0.1",
       .unit = mm,
       .range = sheet,
       .default_text = "thickness of the material's sheet",
       .help = "Thickness of the ply."},
      {.name = "patch[].plies[].angle",
       .kind = KeyKind::number,
       .unit = degrees,
       .range = turn,
       .default_number = 0.0,
       .help = "Direction of the fibre from x, positive from x to y seen from outside."},
      {.name = "patch[].plies[].grain",
       .kind = KeyKind::choice,
       .choices = {"laid", "carved"},
       .default_text = "laid",
       .help = "laid follows the surface; carved keeps the axes of a board."},
  };
}

} // namespace plate::key_declarations
