// SPDX-License-Identifier: MPL-2.0
#include "declarations.h"

namespace plate::key_declarations
{

namespace
{

std::vector<Key> problem_keys()
{
  return {
      {.name = "title",
       .kind = KeyKind::text,
       .example = "\"Laminate for the spruce top\"",
       .default_text = "name of the file",
       .help = "Stands above the results."},
      {.name = "reference",
       .kind = KeyKind::text,
       .example = "\"spruce_top.toml\"",
       .default_text = "none; one of reference, measured must be given",
       .help = "Design file of the plate to imitate."},
      {.name = "measured",
       .kind = KeyKind::text,
       .example = "\"measured.csv\"",
       .default_text = "none",
       .help = "Measured modes to imitate, as for plate compare --measured. Without shapes a mode of the list is taken "
               "for the mode of the start design with its name, M1, M2 or M5, else with its number."},
      {.name = "start",
       .kind = KeyKind::text,
       .example = "\"laminate_top.toml\"",
       .help = "Design file of the plate to be laid: geometry, bar, materials and everything that is not searched. Its "
               "[layup] is replaced."},
  };
}

std::vector<Key> available_keys()
{
  return {
      {.name = "available.materials",
       .kind = KeyKind::texts,
       .example = "[\"carbon_ud\", \"flax_ud\", \"balsa\"]",
       .help = "What the workshop has: materials of the start design or built in; those with core = true are cores."},
      {.name = "available.thickness.*",
       .kind = KeyKind::numbers,
       .example = "[0.1, 0.2]",
       .unit = mm,
       .range = sheet,
       .default_text = "thickness of the material's sheet",
       .help = "Thicknesses of the sheets of that material."},
      {.name = "available.core_thickness",
       .kind = KeyKind::numbers,
       .example = "[1.0, 1.5, 2.0]",
       .unit = mm,
       .range = sheet,
       .default_text = "thickness of the core's sheet",
       .help = "Thicknesses of cores without an entry in [available.thickness]."},
      {.name = "available.angles",
       .kind = KeyKind::numbers,
       .example = "[0, 90, 45, -45]",
       .unit = degrees,
       .range = turn,
       .choices = {"any"},
       .default_text = "[0, 90, 45, -45]",
       .help = "Angles of plies; \"any\" searches in steps of 15 degrees and refines the best between them."},
      {.name = "available.max_plies",
       .kind = KeyKind::number,
       .range = between(1.0, 40.0),
       .default_number = 8.0,
       .help = "Plies of the whole laminate, its core not counted."},
      {.name = "available.symmetric",
       .kind = KeyKind::flag,
       .default_text = "true",
       .help = "Whether laminates are the same on both sides of their middle. Others warp when they cure."},
      {.name = "available.balanced",
       .kind = KeyKind::flag,
       .default_text = "false",
       .help = "Whether stretching must not shear the laminate: for each ply at an angle one at the opposite."},
      {.name = "available.core",
       .kind = KeyKind::choice,
       .choices = {"none", "allowed", "required"},
       .default_text = "allowed",
       .help = "Whether laminates have a core in their middle, if there is a core among the materials."},
      {.name = "available.patches.max_plies",
       .kind = KeyKind::number,
       .example = "1",
       .range = between(1.0, 8.0),
       .default_text = "none: patches stay as they are",
       .help =
           "Plies that each [[patch]] of the start design may have, of the sheets and angles available; it may also "
           "be left out, or stay. Laminates are searched with the patches of the start; then the plies of patches "
           "are changed one by one under the four best."},
  };
}

std::vector<Key> wanted_keys()
{
  return {
      {.name = "wanted.modes",
       .kind = KeyKind::texts,
       .example = "[\"M1\", \"M2\", \"M5\"]",
       .default_text = "M1, M2, M5, where wanted.count is not given",
       .help = "Modes to come close to, by name or number."},
      {.name = "wanted.count",
       .kind = KeyKind::number,
       .example = "8",
       .range = between(1.0, 40.0),
       .default_text = "none",
       .help = "Instead of names: this many of the lowest modes."},
      {.name = "wanted.mass_g.min",
       .kind = KeyKind::number,
       .example = "60.0",
       .unit = grams,
       .range = above(0.0, 1e6),
       .default_text = "none",
       .help = "Least mass of the plate."},
      {.name = "wanted.mass_g.max",
       .kind = KeyKind::number,
       .example = "85.0",
       .unit = grams,
       .range = above(0.0, 1e6),
       .default_text = "none",
       .help = "Greatest mass of the plate."},
      {.name = "wanted.margin.min",
       .kind = KeyKind::number,
       .example = "3.0",
       .range = above(0.0, 1000.0),
       .default_text = "none",
       .help =
           "Least margin of strength in the cases of plate load, before knock-downs: laminates are loaded before they "
           "are shown; one below it gives its place to the next best of like mass, and is listed as refused."},
      {.name = "wanted.likeness",
       .kind = KeyKind::number,
       .example = "0.8",
       .range = between(0.0, 1.0),
       .default_text = "none",
       .help = "Likeness of shape (MAC) that each mode should have with the reference's. What is missing counts in the "
               "score beside the cents, by squares: 0.1 as 20 cents."},
      {.name = "wanted.loss",
       .kind = KeyKind::number,
       .example = "0.1",
       .range = between(0.0, 1.0),
       .default_text = "none",
       .help = "Part of the loss of each of the reference's modes by which that of the laminate's may differ. What is "
               "beyond counts in the score beside the cents, by squares: 0.1 as 20 cents. Measured modes need "
               "loss_percent."},
  };
}

} // namespace

std::vector<Key> match_keys()
{
  return joined({problem_keys(), available_keys(), wanted_keys()});
}

} // namespace plate::key_declarations
