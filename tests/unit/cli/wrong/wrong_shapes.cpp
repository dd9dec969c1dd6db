// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{
namespace
{

std::string slot(const std::string& lines)
{
  return "[[soundhole]]\nkind = \"slot\"\n" + lines + "\n";
}

std::string f_hole(const std::string& lines)
{
  return "[[soundhole]]\nkind = \"f\"\n" + lines + "\n";
}

std::string bar(const std::string& lines)
{
  return "[bar]\nmaterial = \"spruce\"\n" + lines + "\n";
}

std::string repeated(const std::string& text, int count)
{
  std::string out;
  for (int i = 0; i < count; ++i)
    out += text;
  return out;
}

} // namespace

std::vector<WrongFile> wrong_shapes()
{
  const std::string plate = solid_plate();
  const std::string viola = viola_plate();
  const std::string good_slot = slot("centre = [0, 50]\nlength = 60\nwidth = 5");
  return {
      {"ten thousand soundholes", plate + repeated(good_slot, 10000), {":11: soundhole", "10000 entries"}},
      {"forty soundholes", plate + repeated(good_slot, 40), {":161: soundhole.31", "40 soundholes; at most 30"}},
      {"hole outside",
       plate + slot("centre = [0, 150]\nlength = 30\nwidth = 5"),
       {":11: soundhole.1", "outside the outline", "mm wide"}},
      {"hole across the edge",
       plate + slot("centre = [170, 50]\nlength = 30\nwidth = 5"),
       {":11: soundhole.1", "crosses the outline"}},
      {"hole at the edge",
       plate + slot("centre = [0, 97.49]\nlength = 30\nwidth = 5"),
       {":11: soundhole.1", "comes within 0.00", " mm of the outline", "at least 0.525 mm must remain, so move it 0.5"}},
      {"hole that touches the edge",
       plate + slot("centre = [0, 97.5]\nlength = 30\nwidth = 5"),
       {":11: soundhole.1", "the outline"}},
      {"holes overlapping",
       plate + good_slot + slot("centre = [10, 52]\nlength = 60\nwidth = 5"),
       {":16: soundhole.2", "soundhole 1"}},
      {"the same hole twice", plate + good_slot + good_slot, {":16: soundhole.2", "soundhole 1"}},
      {"hole inside a hole",
       plate + slot("centre = [0, 50]\nlength = 60\nwidth = 20") + slot("centre = [0, 50]\nlength = 10\nwidth = 2"),
       {":16: soundhole.2", "lies inside soundhole 1"}},
      {"hole in its mirror image",
       plate + slot("centre = [0, 1]\nlength = 60\nwidth = 5"),
       {":11: soundhole.1", "mirror image"}},
      {"slot wider than long",
       plate + slot("centre = [0, 50]\nlength = 3\nwidth = 10"),
       {":11: soundhole.1", "length 3 mm, width 10 mm"}},
      {"slot without centre",
       plate + slot("length = 30\nwidth = 5"),
       {":11: soundhole.1.centre", "missing; must be a list of 2 numbers"}},
      {"f-hole longer than the waist", viola + f_hole("length = 200"), {":11: soundhole.1"}},
      {"f-hole too short for its eyes",
       viola + f_hole("length = 40\nupper_eye = 10\nlower_eye = 12"),
       {":11: soundhole.1", "too short for eyes"}},
      {"f-hole upright", viola + f_hole("tilt = 60"), {":13: soundhole.1.tilt = 60", "at least"}},
      {"f-hole without wings", viola + f_hole("tilt = 11"), {":11: soundhole.1", "wing"}},
      {"f-hole outside", viola + f_hole("where = [0, 300]"), {":11: soundhole.1", "outside the outline"}},
      {"f-hole with a negative stem", viola + f_hole("stem = -3"), {":13: soundhole.1.stem = -3", "at least 0.01"}},
      {"a key of a slot in an f-hole", viola + f_hole("width = 3"), {":13: soundhole.1.width = 3", "not used with"}},
      {"bar outside",
       plate + bar("length = 200\nwidth = 6\nheight = 9\noffset = 150"),
       {":11: bar", "outside the outline"}},
      {"bar longer than the plate",
       plate + bar("length = 400\nwidth = 6\nheight = 9\noffset = 20"),
       {":11: bar", "the bar crosses the outline"}},
      {"bar across a hole",
       plate + good_slot + bar("length = 200\nwidth = 6\nheight = 9\noffset = 50"),
       {":16: bar", "soundhole 1"}},
      {"bar turned across a hole",
       plate + good_slot + bar("length = 200\nwidth = 6\nheight = 9\noffset = 40\nangle = 30"),
       {":16: bar", "crosses soundhole 1"}},
      {"bar wider than long",
       plate + bar("length = 5\nwidth = 6\nheight = 9\noffset = 20"),
       {":11: bar", "width < length"}},
      {"bar of no material",
       plate + "[bar]\nmaterial = \"oak\"\nlength = 200\nwidth = 6\nheight = 9\noffset = 20\n",
       {":12: bar.material = \"oak\"", "no material of the name \"oak\"", "declared or built in"}},
      {"bar higher at its ends",
       plate + bar("length = 200\nwidth = 6\nheight = 9\nend_height = 10\noffset = 20"),
       {":16: bar.end_height = 10", "higher than the bar"}},
      {"bar beside the bridge",
       plate + bar("length = 100\nwidth = 6\nheight = 9\noffset = 20\ncentre = 80"),
       {"bar.length = 100", "bridge line"}},
      {"bar without height", plate + bar("length = 200\nwidth = 6\noffset = 20"), {":11: bar.height", "missing"}},
  };
}

} // namespace plate::test
