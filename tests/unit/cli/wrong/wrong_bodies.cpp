// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{
namespace
{

std::string with_length(const std::string& length)
{
  return "[outline]\nkind = \"rectangle\"\nlength = " + length +
         "\nwidth = 200\n[thickness]\nvalue = 2.5\n[layup]\nsolid = \"spruce\"\n";
}

std::string with_plates(const std::string& top, const std::string& back)
{
  return "[body]\ntop = \"" + top + "\"\nback = \"" + back + "\"\n";
}

} // namespace

std::string body_start()
{
  return with_plates("top.toml", "back.toml");
}

std::map<std::string, std::string> wrong_body_plates()
{
  const std::string hole = "[[soundhole]]\nkind = \"slot\"\ncentre = [0, 60]\nlength = 70\nwidth = 6\n";
  return {{"top.toml", solid_plate() + hole},
          {"back.toml", solid_plate()},
          {"longer.toml", with_length("351")},
          {"round.toml",
           "[outline]\nkind = \"ellipse\"\nlength = 350\nwidth = 200\n[thickness]\nvalue = 2.5\n[layup]\nsolid = "
           "\"spruce\"\n"},
          {"held.toml", solid_plate() + "[support]\nedge = \"hinged\"\n"}};
}

std::vector<WrongFile> wrong_bodies()
{
  const std::string body = body_start();
  return {
      {"no back", "[body]\ntop = \"top.toml\"\n", {":1: body.back", "missing", "text in quotes"}},
      {"no top", "[body]\nback = \"back.toml\"\n", {":1: body.top", "missing", "text in quotes"}},
      {"a plate's file", solid_plate(), {"body.toml: body", "missing", "names the design files of top and back"}},
      {"several bodies", "[[body]]\ntop = \"top.toml\"\n", {":1: body", "must be a table with the keys top, back"}},
      {"unknown key of body",
       "[body]\ntopp = \"top.toml\"\n",
       {":2: body.topp = \"top.toml\"", "nearest: body.top", "keys of [body]: top, back"}},
      {"a plate that is not there",
       with_plates("topp.toml", "back.toml"),
       {":2: body.top = \"topp.toml\"", "there is no such file"}},
      {"a plate outside the folder", with_plates("../top.toml", "back.toml"), {":2: body.top = \"../top.toml\""}},
      {"itself as a plate",
       with_plates("body.toml", "back.toml"),
       {"body.toml:1: body", "is a table of a body's file, and this is read as the file of a plate"}},
      {"a back of another length",
       with_plates("top.toml", "longer.toml"),
       {":3: body.back = \"longer.toml\"", "0.5 mm away", "same outline"}},
      {"a back of another shape",
       with_plates("top.toml", "round.toml"),
       {":3: body.back = \"round.toml\"", "mm away", "same outline"}},
      {"a plate that is held",
       with_plates("held.toml", "back.toml"),
       {":2: body.top = \"held.toml\"", "[support]", "leave it out"}},
      {"a back with holes",
       with_plates("top.toml", "top.toml"),
       {":3: body.back = \"top.toml\"", "1 entries of [[soundhole]]", "leave them out"}},
      {"unknown table", body + "[ribbs]\nheight = 3\n", {":4: ribbs", "nearest: ribs", "keys of the file"}},
      {"a table of a plate", body + "[outline]\nlength = 350\n", {":4: outline", "no table of a body's file"}},
      {"unknown key of ribs",
       body + "[ribs]\nheigth = 30\n",
       {":5: ribs.heigth = 30", "nearest: ribs.height", "keys of [ribs]: height"}},
      {"ribs without height", body + "[ribs]\nheight = 0\n", {":5: ribs.height = 0", "greater than 0"}},
      {"ribs of negative height", body + "[ribs]\nheight = -3\n", {":5: ribs.height = -3", "at least 0"}},
      {"a height in words", body + "[ribs]\nheight = \"high\"\n", {":5: ribs.height = \"high\"", "number in mm"}},
      {"ribs of no wood", body + "[ribs]\nmaterial = \"mapel\"\n", {":5: ribs.material", "nearest: \"maple\""}},
      {"ribs given twice",
       body + "[ribs]\nthickness = 1\nplies = [{ material = \"maple\", thickness = 1 }]\n",
       {":5: ribs.thickness = 1", "contradicts ribs.plies"}},
      {"plates flush with the ribs", body + "[ribs]\noverhang = 0\n", {":5: ribs.overhang = 0", "greater than 0"}},
      {"plates far over the ribs",
       body + "[ribs]\noverhang = 21\n",
       {":5: ribs.overhang = 21", "a tenth of the plates' width of 200 mm"}},
      {"linings that meet", body + "[linings]\nheight = 20\n", {":5: linings.height = 20", "at most 0.45"}},
      {"unknown key of linings",
       body + "[linings]\nwidth = 2\n",
       {":5: linings.width = 2", "keys of [linings]: height"}},
      {"a block without depth",
       body + "[blocks]\nend = [50, 0]\n",
       {":5: blocks.end = [50, 0]", "a block has a depth"}},
      {"a block wider than the body",
       body + "[blocks]\nend = [201, 16]\n",
       {":5: blocks.end = [201, 16]", "350 x 200 mm", "as wide"}},
      {"a block that fills the body",
       body + "[blocks]\nend = [50, 90]\n",
       {":5: blocks.end = [50, 90]", "a quarter of its length"}},
      {"a neck on no block",
       body + "[blocks]\nend = [0, 0]\n[neck]\nmass = 200\ncentre = [200, 0]\nlength = 200\n",
       {":6: neck", "blocks.end"}},
      {"a post beside the body",
       body + "[soundpost]\nat = [300, 0]\n",
       {":5: soundpost.at = [300, 0]", "beside the top or in a hole"}},
      {"a post on the ribs",
       body + "[soundpost]\nat = [172, 0]\ndiameter = 6\n",
       {":5: soundpost.at = [172, 0]", "3 mm inside the outline", "at least 6.3 mm"}},
      {"a post in a hole", body + "[soundpost]\nat = [0, 60]\n", {":5: soundpost.at = [0, 60]", "in a hole"}},
      {"a post of given length",
       body + "[soundpost]\nat = [0, 0]\nlength = 40\n",
       {":6: soundpost.length = 40", "leave it out"}},
      {"a bridge without mass", body + "[bridge]\nmass = 0\n", {":5: bridge.mass = 0", "greater than 0"}},
      {"air as hot as an oven", body + "[air]\ntemperature = 200\n", {":5: air.temperature = 200", "at most 100"}},
      {"a mesh coarser than the body", body + "[mesh]\nsize = 60\n", {":5: mesh.size = 60", "50 mm"}},
      {"a mesh finer than the machine", body + "[mesh]\nsize = 0.02\n", {"mesh.size"}},
      {"unknown key in an override", body, {"--set: ribs.heigth", "nearest: ribs.height"}, {"--set", "ribs.heigth=30"}},
      {"unknown key of a plate in an override",
       body,
       {"--set: layup.slid", "nearest: layup.solid"},
       {"--set", "top.layup.slid=x"}},
      {"a table of a plate in an override",
       body,
       {"--set: thickness", "no table of a body's file"},
       {"--set", "thickness.value=3"}},
      {"no modes", body, {"--count"}, {"--count", "0"}},
      {"a plate as reference", body, {"back.toml: body", "missing"}, {"--reference", "back.toml"}},
      {"a reference that is not there", body, {"none.toml", "does it exist"}, {"--reference", "none.toml"}},
  };
}

} // namespace plate::test
