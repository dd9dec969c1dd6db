// SPDX-License-Identifier: MPL-2.0
#include "declarations.h"

namespace plate::key_declarations
{

namespace
{

constexpr KeyRange share = above(0.0, 1.0);
constexpr KeyRange force = above(0.0, 10000.0);

std::vector<Key> string_keys()
{
  return {
      {.name = "strings.tension",
       .kind = KeyKind::numbers,
       .example = "[60.0, 58.0, 55.0, 57.0]",
       .unit = newton,
       .range = force,
       .count = 4,
       .default_text = "by the plate's length: 55 N each on a violin, 57 on a viola, 140 on a cello",
       .help = "Tension of each string, for plate load."},
      {.name = "strings.angle",
       .kind = KeyKind::number,
       .unit = degrees,
       .range = above(0.0, 90.0),
       .default_number = 22.0,
       .help = "Angle by which the strings bend over the bridge; they press with 2 T sin(angle / 2)."},
      {.name = "strings.foot",
       .kind = KeyKind::numbers,
       .example = "[4.5, 10.0]",
       .unit = mm,
       .range = detail,
       .count = 2,
       .default_text = "0.13 and 0.3 of the distance of the bridge's feet",
       .help = "Length of a foot of the bridge along and across the body; it presses evenly over the ellipse of that "
               "size."},
      {.name = "soundpost.at",
       .kind = KeyKind::numbers,
       .example = "[14.5, -17.0]",
       .unit = mm,
       .range = place,
       .count = 2,
       .help =
           "x and y of the soundpost under a top. In the file of a plate what it stands on does not give; in that of a "
           "body it stands on the back, below. Without [soundpost] there is none."},
      {.name = "soundpost.diameter",
       .kind = KeyKind::number,
       .unit = mm,
       .range = detail,
       .default_number = 6.5,
       .help = "Diameter of the post."},
      {.name = "soundpost.length",
       .kind = KeyKind::number,
       .example = "52.0",
       .unit = mm,
       .range = above(0.0, 1000.0),
       .default_text = "0.13 of the plate's length",
       .help = "Length of the post: with its modulus along the grain it gives by that much."},
      {.name = "soundpost.material",
       .kind = KeyKind::text,
       .example = "\"spruce\"",
       .default_text = "spruce",
       .help = "Material of the post, grain along it, declared or built in."},
  };
}

std::vector<Key> handling_keys()
{
  return {
      {.name = "handling.thumb",
       .kind = KeyKind::number,
       .unit = newton,
       .range = force,
       .default_number = 20.0,
       .help =
           "Press of a thumb on the plate on its rim, or on the top of a body with a finger below on its back, over a "
           "disc of 15 mm (common practice, no source)."},
      {.name = "handling.thumb_at",
       .kind = KeyKind::numbers,
       .example = "[-121.0, 0.0]",
       .unit = mm,
       .range = place,
       .count = 2,
       .default_text = "on the centre line in the lower bout, 0.3 of the length below the middle",
       .help = "x and y where the thumb presses."},
      {.name = "handling.knock",
       .kind = KeyKind::number,
       .unit = newton,
       .range = force,
       .default_number = 10.0,
       .help = "Force of a knock on the edge of a soundhole and on the corner of a bare plate, over a disc of 8 mm "
               "(common practice, no source)."},
      {.name = "handling.lift",
       .kind = KeyKind::number,
       .range = above(0.0, 100.0),
       .default_number = 3.0,
       .help = "Acceleration with which a bare plate is moved by hand, in multiples of gravity (common practice, no "
               "source). Of a plate only."},
      {.name = "handling.squeeze",
       .kind = KeyKind::number,
       .unit = newton,
       .range = force,
       .default_number = 50.0,
       .help = "Squeeze of a hand on the ribs at the waist, over a patch of 40 mm on either side (assumed, no source). "
               "Of a body only."},
  };
}

std::vector<Key> knock_down_keys()
{
  const auto factor = [](std::string_view name, double value, std::string_view help)
  { return Key{.name = name, .kind = KeyKind::number, .range = share, .default_number = value, .help = help}; };
  return {
      factor("knock_down.hand_layup", 0.8,
             "Laminates laid by hand: strength over that of the data (from memory: 0.8)."),
      factor("knock_down.hole_edge", 0.55,
             "Laminates where the worst place is the cut edge of a soundhole (from memory: 0.5 to 0.6)."),
      factor("knock_down.hot_wet", 0.8, "Laminates in heat and moisture (from memory: 0.7 to 0.85)."),
      factor("knock_down.sustained_laminate", 0.75,
             "Laminates under the strings for years (from memory: carbon 0.7 to 0.8)."),
      factor("knock_down.sustained_wood", 0.6,
             "Wood under the strings for years (Wood Handbook, ch. 5, duration of load, from memory: 0.6 after ten "
             "years)."),
  };
}

} // namespace

std::vector<Key> load_keys()
{
  return joined({string_keys(), handling_keys(), knock_down_keys()});
}

} // namespace plate::key_declarations
