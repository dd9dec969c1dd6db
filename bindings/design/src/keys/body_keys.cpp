// SPDX-License-Identifier: MPL-2.0
#include "declarations.h"

namespace plate::key_declarations
{

namespace
{

Key by_length(std::string_view name, std::string_view example, std::string_view usual, std::string_view help,
              const KeyUnit& unit = mm)
{
  return {.name = name,
          .kind = KeyKind::number,
          .example = example,
          .unit = unit,
          .range = unit.name == mm.name ? between(0.0, 500.0) : above(0.0, 1000.0),
          .default_text = usual,
          .help = help};
}

std::vector<Key> rib_keys()
{
  return {
      by_length("ribs.height", "38.0", "by the length of the body: 30 on a violin, 38 on a viola, 115 on a cello",
                "Height of the ribs between the plates, at the lower end."),
      by_length("ribs.neck_height", "36.0", "ribs.height", "Height at the neck end; straight between both ends."),
      by_length("ribs.thickness", "1.2", "by the length of the body: 1.0, 1.2, 1.5", "Thickness of solid ribs."),
      {.name = "ribs.material",
       .kind = KeyKind::text,
       .example = "\"maple\"",
       .default_text = "maple",
       .help = "Material of solid ribs, grain along them, bent; declared in the body's file or built in."},
      {.name = "ribs.plies[].material",
       .kind = KeyKind::text,
       .example = "\"carbon_ud\"",
       .help = "Material of a ply of laminated ribs, in place of thickness and material; plies are listed from the "
               "inside to the outside."},
      {.name = "ribs.plies[].thickness",
       .kind = KeyKind::number,
       .example = "0.2",
       .unit = mm,
       .range = sheet,
       .default_text = "thickness of the material's sheet",
       .help = "Thickness of the ply."},
      {.name = "ribs.plies[].angle",
       .kind = KeyKind::number,
       .unit = degrees,
       .range = turn,
       .default_number = 0.0,
       .help = "Direction of the fibre from the plane of the rim, positive upwards to the right seen from outside."},
      {.name = "ribs.plies[].grain",
       .kind = KeyKind::choice,
       .choices = {"laid"},
       .default_text = "laid",
       .help = "Ribs are bent: plies follow them."},
      by_length("ribs.overhang", "2.5", "by the length of the body: 2.3, 2.5, 3.5",
                "How far the plates stand over the outer face of the ribs. In sharp tips of corners the ribs run into "
                "the outline."),
  };
}

std::vector<Key> backing_keys()
{
  constexpr KeyRange reach = between(0.0, 500.0);
  return {
      by_length("linings.height", "8.0", "by the length of the body: 7, 8, 12",
                "Height of the linings, glued to the ribs at both plates; 0 for none."),
      by_length("linings.thickness", "2.0", "by the length of the body: 2, 2, 3", "Thickness of the linings."),
      {.name = "linings.material",
       .kind = KeyKind::text,
       .example = "\"spruce\"",
       .default_text = "spruce",
       .help = "Material of the linings, grain along the ribs."},
      {.name = "blocks.end",
       .kind = KeyKind::numbers,
       .example = "[52.0, 16.0]",
       .unit = mm,
       .range = reach,
       .count = 2,
       .default_text = "by the length of the body: [46, 14], [52, 16], [90, 26]",
       .help = "Width across the body and depth of the blocks at the neck and the lower end; width 0 for none. A block "
               "thickens the ribs and is glued to both plates over its area."},
      {.name = "blocks.corner",
       .kind = KeyKind::numbers,
       .example = "[24.0, 6.0]",
       .unit = mm,
       .range = reach,
       .count = 2,
       .default_text = "by the length of the body: [22, 5], [24, 6], [45, 10]",
       .help = "How far a corner block reaches along the ribs from its corner, and its mean depth; reach 0 for none."},
      {.name = "blocks.material",
       .kind = KeyKind::text,
       .example = "\"spruce\"",
       .default_text = "spruce",
       .help = "Material of the blocks, grain from plate to plate."},
  };
}

std::vector<Key> neck_keys()
{
  return {
      {.name = "neck.mass",
       .kind = KeyKind::number,
       .example = "230.0",
       .unit = grams,
       .range = above(0.0, 10000.0),
       .help = "Mass of the neck with all on it, a rigid body fixed to the block at the neck end. Without [neck] there "
               "is none."},
      {.name = "neck.centre",
       .kind = KeyKind::numbers,
       .example = "[320.0, 15.0]",
       .unit = mm,
       .range = place,
       .count = 2,
       .help = "x and z of its centre of gravity: along the body, and above the rim of the top."},
      {.name = "neck.length",
       .kind = KeyKind::number,
       .example = "260.0",
       .unit = mm,
       .range = between(0.0, 3000.0),
       .default_number = 0.0,
       .help = "It turns like a thin rod of that length along x."},
  };
}

} // namespace

std::vector<Key> body_keys()
{
  const std::vector<Key> plates = {
      {.name = "body.top",
       .kind = KeyKind::text,
       .example = "\"top.toml\"",
       .help = "Design file of the top, in the folder of the body's file, the one above it or below."},
      {.name = "body.back",
       .kind = KeyKind::text,
       .example = "\"back.toml\"",
       .help = "Design file of the back, of the same outline; x towards the neck, y to the left seen from its own "
               "outside."},
  };
  const Key bridge = by_length("bridge.mass", "3.0", "by the length of the body: 2.2, 3, 11",
                               "Mass of the bridge, half on each foot.", grams);
  const Key bridge_height = by_length(
      "bridge.height", "37.0", "by the length of the body: 33 on a violin, 37 on a viola, 90 on a cello",
      "Height of the strings over the top at the bridge line, on the centre line. The bridge leans so that it "
      "halves the bend of the strings; to the lower end they run down to the edge of the top.");
  const Key temperature = {.name = "air.temperature",
                           .kind = KeyKind::number,
                           .unit = celsius,
                           .range = between(0.0, 100.0),
                           .default_number = 20.0,
                           .help = "Temperature of the air inside and around the body."};
  return joined({plates, rib_keys(), backing_keys(), {bridge, bridge_height}, neck_keys(), {temperature}});
}

} // namespace plate::key_declarations
