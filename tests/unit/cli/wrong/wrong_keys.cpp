// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{

std::string plate_start()
{
  return "[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n";
}

std::string solid_plate()
{
  return plate_start() + "[thickness]\nvalue = 2.5\n[layup]\nsolid = \"spruce\"\n[mesh]\nsize = 30\n";
}

std::string laminate_plate()
{
  return plate_start() + "[layup]\n";
}

std::string viola_plate()
{
  return "[outline]\nkind = \"bouts\"\nlength = 405\nlower_bout = 236\ncentre_bout = 131\nupper_bout = 193\n"
         "[layup]\nsolid = \"spruce\"\n[thickness]\nvalue = 2.8\n";
}

std::vector<WrongFile> wrong_keys()
{
  const std::string plate = solid_plate();
  return {
      {"unknown key of the file", plate + "[archng]\nheight = 3\n", {":11: archng", "unknown key; nearest: arching"}},
      {"unknown key at the top",
       "titel = \"x\"\n" + plate,
       {":1: titel = \"x\"", "nearest: title", "keys of the file"}},
      {"unknown key of outline",
       "[outline]\nkind = \"rectangle\"\nlenght = 350\n",
       {":3: outline.lenght = 350", "nearest: outline.length", "keys of [outline]: kind, length"}},
      {"unknown key of arching",
       plate + "[arching]\nheigth = 3\n",
       {":12: arching.heigth = 3", "nearest: arching.height"}},
      {"unknown key of thickness",
       plate_start() + "[thickness]\nvlaue = 2.5\n",
       {":6: thickness.vlaue = 2.5", "nearest: thickness.value"}},
      {"unknown key of a soundhole",
       plate + "[[soundhole]]\nkind = \"slot\"\ncenter = [0, 50]\n",
       {":13: soundhole.1.center", "nearest: soundhole.1.centre"}},
      {"unknown key of setup", plate + "[setup]\nstopp = 3\n", {":12: setup.stopp = 3", "nearest: setup.stop"}},
      {"unknown key of the bar", plate + "[bar]\nhieght = 3\n", {":12: bar.hieght = 3", "nearest: bar.height"}},
      {"unknown key of a material",
       plate + "[material.oak]\nE4 = 3\n",
       {":12: material.oak.E4 = 3", "nearest: material.oak.E1", "keys of [material.oak]"}},
      {"unknown key of layup", laminate_plate() + "cod = \"[0]\"\n", {":6: layup.cod", "nearest: layup.code"}},
      {"unknown key of a ply",
       laminate_plate() + "plies = [{ material = \"carbon_ud\", thicknes = 0.1 }]\n",
       {":6: layup.plies.1.thicknes = 0.1", "nearest: layup.plies.1.thickness"}},
      {"unknown key of support",
       plate + "[support]\negde = \"free\"\n",
       {":12: support.egde", "nearest: support.edge"}},
      {"unknown key of strings",
       plate + "[strings]\ntenson = [60, 60, 60, 60]\n",
       {":12: strings.tenson", "nearest: strings.tension"}},
      {"unknown key of the soundpost",
       plate + "[soundpost]\nat = [0, 0]\ndiametre = 6\n",
       {":13: soundpost.diametre", "nearest: soundpost.diameter"}},
      {"unknown key of handling", plate + "[handling]\nknok = 3\n", {":12: handling.knok", "nearest: handling.knock"}},
      {"unknown knock-down",
       plate + "[knock_down]\nwet = 0.8\n",
       {":12: knock_down.wet", "keys of [knock_down]: hand_layup"}},
      {"unknown key of mesh", plate + "sise = 3\n", {":11: mesh.sise = 3", "nearest: mesh.size"}},
      {"upper case", plate + "Size = 3\n", {":11: mesh.Size = 3", "nearest: mesh.size"}},
      {"no outline", "[layup]\nsolid = \"spruce\"\n", {"outline", "missing"}},
      {"no layup", plate_start() + "[thickness]\nvalue = 2.5\n", {"layup", "missing"}},
      {"no thickness", laminate_plate() + "solid = \"spruce\"\n", {"thickness", "missing", "value = 2.8"}},
      {"no width",
       "[outline]\nkind = \"ellipse\"\nlength = 350\n[layup]\nsolid = \"spruce\"\n",
       {":1: outline.width", "missing; must be a number in mm, at least 10"}},
      {"table as a number", "outline = 3\n", {":1: outline = 3", "must be a table with the keys kind, length"}},
      {"number as a table", plate + "[mesh.size]\nx = 3\n", {":11:", "size"}},
      {"number as text",
       "[outline]\nkind = \"ellipse\"\nlength = \"350\"\n",
       {":3: outline.length = \"350\"", "must be a number in mm"}},
      {"text as a number", "title = 3\n", {":1: title = 3", "must be a text in quotes"}},
      {"flag as text",
       plate + "[[soundhole]]\nkind = \"slot\"\nmirror = \"no\"\n",
       {":13: soundhole.1.mirror = \"no\"", "true or false"}},
      {"choice that is none",
       plate + "[arching]\nkind = \"cyclod\"\n",
       {":12: arching.kind = \"cyclod\"", "\"biparabolic\"", "nearest: \"cycloid\""}},
      {"one number for two",
       plate + "[[soundhole]]\nkind = \"slot\"\ncentre = [0]\n",
       {":13: soundhole.1.centre = [0]", "a list of 2 numbers in mm"}},
      {"a table for a list of tables", plate + "[soundhole]\nkind = \"f\"\n", {":11: soundhole", "[[soundhole]]"}},
      {"a list of numbers for a list of tables",
       "soundhole = [1, 2]\n" + plate,
       {":1: soundhole = [1, 2]", "list of tables"}},
      {"a key twice", plate + "size = 20\n", {":11:", "size"}},
      {"a table twice", plate + "[outline]\nkind = \"ellipse\"\n", {":11:", "outline"}},
      {"a date", "title = 1979-05-27\n" + plate, {":1:", "dates and times"}},
      {"not TOML", "outline: { length: 350 }\n", {":1: not valid TOML"}},
      {"text without quotes", "[outline]\nkind = rectangle\n", {":2: not valid TOML"}},
      {"a key of another kind",
       solid_plate() + "[arching]\nkind = \"flat\"\nheight = 3\n",
       {":13: arching.height = 3", "not used with arching.kind = \"flat\""}},
      {"a key of another outline",
       "[outline]\nkind = \"ellipse\"\nlength = 300\nwidth = 200\nupper_bout = 100\n",
       {":5: outline.upper_bout = 100", "not used with outline.kind = \"ellipse\""}},
      {"sides of a plate that has none",
       viola_plate() + "[support]\nedges = [\"free\", \"free\", \"free\", \"free\"]\n",
       {":12: support.edges", "only a rectangle"}},
      {"edge and edges",
       plate + "[support]\nedge = \"free\"\nedges = [\"free\", \"free\", \"free\", \"free\"]\n",
       {":13: support.edges", "contradicts support.edge"}},
  };
}

} // namespace plate::test
