// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{
namespace
{

std::string coded(const std::string& code)
{
  return laminate_plate() + "code = \"" + code + "\"\nply = { material = \"carbon_ud\", thickness = 0.125 }\n";
}

} // namespace

std::vector<WrongFile> wrong_layups()
{
  std::string many = laminate_plate() + "plies = [\n";
  for (int i = 0; i < 2000; ++i)
    many += "{ material = \"carbon_ud\", thickness = 0.001 },\n";
  const std::string ply = "plies = [{ material = \"carbon_ud\", thickness = 0.1 }]\n";
  return {
      {"two thousand plies", many + "]\n", {":6: layup.plies", "2000 entries; at most 1000"}},
      {"no plies", laminate_plate() + "plies = []\n", {":6: layup.plies", "empty"}},
      {"an empty layup", laminate_plate(), {":5: layup", "one of solid, code, plies"}},
      {"solid and plies",
       laminate_plate() + "solid = \"spruce\"\n" + ply,
       {":7: layup.plies", "contradicts layup.solid"}},
      {"thickness of a laminate",
       laminate_plate() + ply + "[thickness]\nvalue = 3\n",
       {":7: thickness", "contradicts layup.plies"}},
      {"ply beside plies",
       laminate_plate() + ply + "ply = { material = \"balsa\" }\n",
       {":7: layup.ply", "belongs to layup.code"}},
      {"grain of a laminate",
       laminate_plate() + ply + "grain = \"carved\"\n",
       {":7: layup.grain", "belongs to a solid plate"}},
      {"a ply of no material",
       laminate_plate() + "plies = [{ material = \"carbon_du\", thickness = 0.1 }]\n",
       {":6: layup.plies.1.material = \"carbon_du\"", "nearest: \"carbon_ud\""}},
      {"a ply without thickness",
       laminate_plate() + "plies = [{ material = \"carbon_ud\" }]\n",
       {":6: layup.plies.1.thickness", "missing"}},
      {"a ply of no thickness",
       laminate_plate() + "plies = [{ material = \"carbon_ud\", thickness = 0 }]\n",
       {":6: layup.plies.1.thickness = 0", "at least 0.001"}},
      {"a solid of no material",
       laminate_plate() + "solid = \"sprucce\"\n[thickness]\nvalue = 3\n",
       {":6: layup.solid", "nearest: \"spruce\""}},
      {"code without bracket", coded("0/90s"), {":6: layup.code", "begins with ["}},
      {"code that does not end", coded("[0/90"), {":6: layup.code", "column"}},
      {"code without an angle", coded("[0//90]"), {":6: layup.code", "column 4"}},
      {"code repeated for ever", coded("[0]999999999"), {":6: layup.code", "from 1 to 1000"}},
      {"code nested for ever", coded("[(((((((((((0)))))))))))]"), {":6: layup.code", "nested 8 deep"}},
      {"code that doubles itself", coded("[((((0)99)99)99)99]s"), {":6: layup.code", "plies"}},
      {"code with a bar in the middle", coded("[0/~90/0]s"), {":6: layup.code", "last ply"}},
      {"code of an unknown material", coded("[0/foam]s"), {":6: layup.code", "no material of the name \"foam\""}},
      {"code without ply", laminate_plate() + "code = \"[0/90]s\"\n", {"layup.ply", "missing"}},
  };
}

} // namespace plate::test
