// SPDX-License-Identifier: MPL-2.0
#include <plate/design/keys.h>

#include <numbers>

namespace plate
{
namespace
{

constexpr KeyUnit mm{"mm", 1e-3};
constexpr KeyUnit degrees{"degrees", std::numbers::pi / 180.0};
constexpr KeyUnit gpa{"GPa", 1e9};
constexpr KeyUnit kg_m3{"kg/m3", 1.0};
constexpr KeyUnit percent{"%", 0.01};
constexpr KeyUnit pure{"", 1.0};

constexpr KeyRange between(double low, double high)
{
  return {.low = low, .high = high};
}
constexpr KeyRange above(double low, double high)
{
  return {.low = low, .high = high, .above = true};
}

// Limits are there to catch slips of unit and sign, not to judge a design: 3 m is longer than any instrument plate.
constexpr KeyRange plate_length = between(10.0, 3000.0);
constexpr KeyRange detail = above(0.0, 500.0);
constexpr KeyRange place = between(-3000.0, 3000.0);
constexpr KeyRange sheet = above(0.0, 50.0);
constexpr KeyRange turn = between(-360.0, 360.0);
constexpr KeyRange modulus = above(0.0, 1500.0);
constexpr KeyRange poisson = between(-1.0, 10.0);

constexpr std::string_view own_default = "from the other constants, see material.*.E3";

std::vector<Key> plate_keys()
{
  return {
      {.name = "title",
       .kind = KeyKind::text,
       .default_text = "name of the file",
       .help = "Name of the design, printed on every result."},

      {.name = "outline.kind",
       .kind = KeyKind::choice,
       .choices = {"bouts", "rectangle", "ellipse"},
       .help = "Planform of the plate."},
      {.name = "outline.length",
       .kind = KeyKind::number,
       .unit = mm,
       .range = plate_length,
       .help = "Length of the plate along x."},
      {.name = "outline.width",
       .kind = KeyKind::number,
       .unit = mm,
       .range = plate_length,
       .only_with = "rectangle|ellipse",
       .help = "Full width along y."},
      {.name = "outline.lower_bout",
       .kind = KeyKind::number,
       .unit = mm,
       .range = plate_length,
       .only_with = "bouts",
       .help = "Full width of the lower bout."},
      {.name = "outline.centre_bout",
       .kind = KeyKind::number,
       .unit = mm,
       .range = plate_length,
       .only_with = "bouts",
       .help = "Full width of the waist."},
      {.name = "outline.upper_bout",
       .kind = KeyKind::number,
       .unit = mm,
       .range = plate_length,
       .only_with = "bouts",
       .help = "Full width of the upper bout."},

      {.name = "arching.kind",
       .kind = KeyKind::choice,
       .choices = {"flat", "cycloid", "biparabolic", "elliptic"},
       .default_text = "flat",
       .help = "Shape of the arch."},
      {.name = "arching.height",
       .kind = KeyKind::number,
       .unit = mm,
       .range = between(0.0, 300.0),
       .only_with = "cycloid|biparabolic|elliptic",
       .help = "Rise of the mid-surface from rim to crown. Makers quote the overall height, which includes the edge "
               "thickness."},

      {.name = "thickness.kind",
       .kind = KeyKind::choice,
       .choices = {"uniform", "graduated"},
       .default_text = "uniform",
       .help = "Thickness of a solid plate; a laminate's thickness comes from its plies."},
      {.name = "thickness.value",
       .kind = KeyKind::number,
       .unit = mm,
       .range = sheet,
       .only_with = "uniform",
       .help = "Thickness everywhere, along the normal."},
      {.name = "thickness.centre",
       .kind = KeyKind::number,
       .unit = mm,
       .range = sheet,
       .only_with = "graduated",
       .help = "Thickness in the middle of the plate."},
      {.name = "thickness.bouts",
       .kind = KeyKind::number,
       .unit = mm,
       .range = sheet,
       .only_with = "graduated",
       .help = "Thickness in the upper and the lower bout."},
      {.name = "thickness.channel",
       .kind = KeyKind::number,
       .unit = mm,
       .range = sheet,
       .only_with = "graduated",
       .help = "Thickness in the channel inside the edge."},
      {.name = "thickness.edge",
       .kind = KeyKind::number,
       .unit = mm,
       .range = sheet,
       .only_with = "graduated",
       .help = "Thickness at the edge."},
  };
}

std::vector<Key> detail_keys()
{
  return {
      {.name = "soundhole[].kind", .kind = KeyKind::choice, .choices = {"f", "slot"}, .help = "Shape of the hole."},
      {.name = "soundhole[].mirror",
       .kind = KeyKind::flag,
       .default_text = "true",
       .help = "Whether the hole is cut on the other side of the centre line as well."},
      {.name = "soundhole[].length",
       .kind = KeyKind::number,
       .unit = mm,
       .range = detail,
       .default_text = "f: in proportion to the plate; slot: must be given",
       .help = "f: from the outer edge of one eye to that of the other, along x; slot: over all."},
      {.name = "soundhole[].where",
       .kind = KeyKind::numbers,
       .unit = mm,
       .range = place,
       .count = 2,
       .only_with = "f",
       .default_text = "in proportion to the plate",
       .help = "x and y of the middle between the eyes."},
      {.name = "soundhole[].upper_eye",
       .kind = KeyKind::number,
       .unit = mm,
       .range = detail,
       .only_with = "f",
       .default_text = "in proportion to the plate",
       .help = "Diameter of the upper eye."},
      {.name = "soundhole[].lower_eye",
       .kind = KeyKind::number,
       .unit = mm,
       .range = detail,
       .only_with = "f",
       .default_text = "in proportion to the plate",
       .help = "Diameter of the lower eye."},
      {.name = "soundhole[].stem",
       .kind = KeyKind::number,
       .unit = mm,
       .range = detail,
       .only_with = "f",
       .default_text = "in proportion to the plate",
       .help = "Width of the stem."},
      {.name = "soundhole[].tilt",
       .kind = KeyKind::number,
       .unit = degrees,
       .range = between(10.0, 50.0),
       .only_with = "f",
       .default_text = "36",
       .help = "Angle of the line through the eyes from x, the lower eye further out."},
      {.name = "soundhole[].centre",
       .kind = KeyKind::numbers,
       .unit = mm,
       .range = place,
       .count = 2,
       .only_with = "slot",
       .help = "x and y of the middle of the slot."},
      {.name = "soundhole[].width",
       .kind = KeyKind::number,
       .unit = mm,
       .range = detail,
       .only_with = "slot",
       .help = "Width of the slot; its ends are round."},
      {.name = "soundhole[].angle",
       .kind = KeyKind::number,
       .unit = degrees,
       .range = turn,
       .only_with = "slot",
       .default_number = 0.0,
       .help = "Angle of the slot's axis from x, positive from x to y."},

      {.name = "setup.stop",
       .kind = KeyKind::number,
       .unit = mm,
       .range = above(0.0, 3000.0),
       .default_text = "0.549 of the length for bouts, else half the length",
       .help = "From the upper edge of the plate to the bridge line, on the centre line."},
      {.name = "setup.string_length",
       .kind = KeyKind::number,
       .unit = mm,
       .range = above(0.0, 3000.0),
       .default_text = "0.926 of the length",
       .help = "Sounding length of the strings."},
      {.name = "setup.bridge_feet",
       .kind = KeyKind::number,
       .unit = mm,
       .range = detail,
       .default_text = "0.084 of the length",
       .help = "Distance of the centres of the bridge's feet."},

      {.name = "bar.material", .kind = KeyKind::text, .help = "Material of the bass bar, declared or built in."},
      {.name = "bar.length",
       .kind = KeyKind::number,
       .unit = mm,
       .range = above(0.0, 3000.0),
       .help = "Length in planform."},
      {.name = "bar.width", .kind = KeyKind::number, .unit = mm, .range = detail, .help = "Width of the glued face."},
      {.name = "bar.height",
       .kind = KeyKind::number,
       .unit = mm,
       .range = detail,
       .help = "Height at the bridge line."},
      {.name = "bar.end_height",
       .kind = KeyKind::number,
       .unit = mm,
       .range = detail,
       .default_number = 3.5,
       .help = "Height at both ends."},
      {.name = "bar.profile",
       .kind = KeyKind::choice,
       .choices = {"straight", "rounded"},
       .default_text = "straight",
       .help = "Height along the bar: straight from the bridge line to both ends, or rounded under the bridge."},
      {.name = "bar.centre",
       .kind = KeyKind::number,
       .unit = mm,
       .range = place,
       .default_number = 0.0,
       .help = "x of the bar's middle."},
      {.name = "bar.offset",
       .kind = KeyKind::number,
       .unit = mm,
       .range = place,
       .help = "y of the bar's middle; positive on the bass side of a top."},
      {.name = "bar.angle",
       .kind = KeyKind::number,
       .unit = degrees,
       .range = between(-45.0, 45.0),
       .default_number = 0.0,
       .help = "Turns the bar from the centre line, positive from x to y."},
  };
}

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

std::vector<Key> layup_keys()
{
  return {
      {.name = "layup.solid",
       .kind = KeyKind::text,
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
      {.name = "layup.code",
       .kind = KeyKind::text,
       .default_text = "none",
       .help =
           "Laminate code from inside to outside, e.g. [0/60/-60]s; names of materials stand for plies of their own."},
      {.name = "layup.ply.material",
       .kind = KeyKind::text,
       .help = "Material of the plies that the code gives by angle."},
      {.name = "layup.ply.thickness",
       .kind = KeyKind::number,
       .unit = mm,
       .range = sheet,
       .default_text = "thickness of the material's sheet",
       .help = "Thickness of one such ply."},
      {.name = "layup.plies[].material",
       .kind = KeyKind::text,
       .help = "Material of a ply; plies are listed from inside to outside."},
      {.name = "layup.plies[].thickness",
       .kind = KeyKind::number,
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
      {.name = "layup.scale",
       .kind = KeyKind::number,
       .unit = pure,
       .range = above(0.0, 100.0),
       .default_number = 1.0,
       .help = "Factor on the thickness of every ply but cores, and on the thickness of a solid plate."},
      {.name = "layup.scale_core",
       .kind = KeyKind::number,
       .unit = pure,
       .range = above(0.0, 100.0),
       .default_number = 1.0,
       .help = "Factor on the thickness of cores."},

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

std::vector<Key> all_keys()
{
  std::vector<Key> keys;
  for (const std::vector<Key>& part : {plate_keys(), detail_keys(), material_keys(), layup_keys()})
    keys.insert(keys.end(), part.begin(), part.end());
  return keys;
}

} // namespace

std::span<const Key> design_keys()
{
  static const std::vector<Key> keys = all_keys();
  return keys;
}

} // namespace plate
