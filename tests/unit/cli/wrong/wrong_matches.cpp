// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{

namespace
{

/// Lines 1 to 4; `plate.toml` is a good design.
std::string problem()
{
  return "reference = \"plate.toml\"\nstart = \"plate.toml\"\n[available]\nmaterials = [\"carbon_ud\"]\n";
}

/// problem() with thicknesses, lines 1 to 5.
std::string whole()
{
  return problem() + "thickness.carbon_ud = [0.2]\n";
}

} // namespace

std::vector<WrongFile> wrong_matches()
{
  return {
      {"nothing", "", {":1: reference: missing", "one of reference"}},
      {"reference and measured", "measured = \"plate.toml\"\n" + whole(), {":1: measured", "contradicts reference"}},
      {"no start", "reference = \"plate.toml\"\n", {"start: missing"}},
      {"a start that is not there",
       "reference = \"plate.toml\"\nstart = \"none.toml\"\n",
       {":2: start = \"none.toml\""}},
      {"a start outside the folder", "reference = \"plate.toml\"\nstart = \"../plate.toml\"\n", {":2: start"}},
      {"no supplies", "reference = \"plate.toml\"\nstart = \"plate.toml\"\n", {"available: missing"}},
      {"a mistyped key", problem() + "angels = [0]\n", {":5: available.angels", "nearest: available.angles"}},
      {"a key of a design", "[outline]\n" + whole(), {":1: outline", "unknown key"}},
      {"no such material",
       "reference = \"plate.toml\"\nstart = \"plate.toml\"\n[available]\nmaterials = [\"carbon_udd\"]\n",
       {":4: available.materials", "nearest: \"carbon_ud\""}},
      {"only cores",
       "reference = \"plate.toml\"\nstart = \"plate.toml\"\n[available]\nmaterials = [\"balsa\"]\n"
       "core_thickness = [1]\n",
       {":4: available.materials", "all of them are cores"}},
      {"a sheet of no thickness", problem(), {":4: available.materials", "available.thickness.carbon_ud"}},
      {"thickness of another material",
       whole() + "thickness.flax_ud = [0.2]\n",
       {":6: ", "none of available.materials"}},
      {"a word for angles", whole() + "angles = \"some\"\n", {":6: available.angles = \"some\"", "or \"any\""}},
      {"no angles", whole() + "angles = []\n", {":6: available.angles", "at least one number"}},
      {"half a ply", whole() + "max_plies = 2.5\n", {":6: available.max_plies = 2.5", "whole number"}},
      {"a core that is not there", whole() + "core = \"required\"\n", {":6: available.core", "core = true"}},
      {"names and a count", whole() + "[wanted]\nmodes = [\"M1\"]\ncount = 2\n", {":8: wanted.count", "contradicts"}},
      {"limits that exclude each other",
       whole() + "[wanted]\nmass_g = { min = 90, max = 80 }\n",
       {":7: wanted.mass_g.min = 90", "above wanted.mass_g.max = 80"}},
      {"mass of nothing",
       whole() + "[wanted]\nmass_g = { max = 0 }\n",
       {":7: wanted.mass_g.max = 0", "greater than 0"}},
      {"losses further off than all", whole() + "[wanted]\nloss = 2\n", {":7: wanted.loss = 2", "at most 1"}},
      {"patches that are not there",
       whole() + "patches = { max_plies = 1 }\n",
       {":6: available.patches.max_plies = 1", "no [[patch]]"}},
      {"half a ply on a patch",
       whole() + "patches = { max_plies = 1.5 }\n",
       {":6: available.patches.max_plies = 1.5", "whole number"}},
      {"a mode the reference has not", whole() + "[wanted]\nmodes = [\"M7\"]\n", {"no mode M7", "wanted.count"}},
      {"a free key that is none",
       whole() + "[free]\n\"arching.hight\" = [1, 2]\n",
       {":7: free.arching.hight", "arching.height"}},
      {"a free key of one value",
       whole() + "[free]\n\"arching.height\" = 12\n",
       {":7: free.arching.height = 12", "[14.0, 19.0]"}},
      {"the layup as a free key",
       whole() + "[free]\n\"layup.scale\" = [0.5, 2]\n",
       {":7: free.layup.scale", "no shape"}},
  };
}

} // namespace plate::test
