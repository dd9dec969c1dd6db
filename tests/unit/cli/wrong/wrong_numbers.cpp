// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{
namespace
{

std::string of_length(const std::string& value)
{
  return "[outline]\nkind = \"ellipse\"\nlength = " + value +
         "\nwidth = 200\n[layup]\nsolid = \"spruce\"\n[thickness]\nvalue = 3\n";
}

std::string of_spruce(const std::string& line)
{
  return solid_plate() + "[material.spruce]\n" + line + "\n";
}

} // namespace

std::vector<WrongFile> wrong_numbers()
{
  const std::string allowed = "must be a number in mm, at least 10 and at most 3000";
  const std::string own = "E1 = 10\nE2 = 1\nG12 = 1\nnu12 = 0.3\ndensity = 500\n";
  return {
      {"negative length", of_length("-350"), {":3: outline.length = -350", allowed}},
      {"zero length", of_length("0"), {":3: outline.length = 0", allowed}},
      {"NaN", of_length("nan"), {":3: outline.length = nan", allowed}},
      {"infinity", of_length("inf"), {":3: outline.length = inf", allowed}},
      {"minus infinity", of_length("-inf"), {":3: outline.length = -inf", allowed}},
      {"huge number", of_length("1e308"), {":3: outline.length = 1e+308", allowed}},
      {"beyond double", of_length("1e999"), {":3:"}},
      {"integer beyond 64 bits", of_length("99999999999999999999999999"), {":3: not valid TOML"}},
      {"metres for millimetres", of_length("0.350"), {":3: outline.length = 0.35", allowed}},
      {"no thickness left",
       plate_start() + "[thickness]\nvalue = 0\n[layup]\nsolid = \"spruce\"\n",
       {":6: thickness.value = 0", "at least 0.001 and at most 50"}},
      {"thickness that no double feels",
       plate_start() + "[thickness]\nvalue = 1e-300\n",
       {":6: thickness.value = 1e-300", "at least 0.001"}},
      {"thicker than an instrument",
       plate_start() + "[thickness]\nvalue = 60\n",
       {":6: thickness.value = 60", "at most 50"}},
      {"thickness zero by scale", solid_plate() + "[layup.ply]\n", {":11:", "layup.ply"}},
      {"scale zero", laminate_plate() + "solid = \"spruce\"\nscale = 0\n", {":7: layup.scale = 0", "at least 0.01"}},
      {"arch higher than allowed",
       solid_plate() + "[arching]\nkind = \"cycloid\"\nheight = 301\n",
       {":13: arching.height = 301", "at least 0 and at most 300"}},
      {"bouts out of proportion",
       "[outline]\nkind = \"bouts\"\nlength = 405\nlower_bout = 236\ncentre_bout = 230\nupper_bout = "
       "193\n[layup]\nsolid = \"spruce\"\n[thickness]\nvalue = 3\n",
       {":1: outline", "centre_bout = 230 mm is out of proportion", "must be from"}},
      {"stop outside the plate",
       solid_plate() + "[setup]\nstop = 350\n",
       {":12: setup.stop = 350", "outside the plate"}},
      {"impossible Poisson's ratio", of_spruce("nu12 = 5"), {":11: material.spruce", "impossible material", "nu12"}},
      {"impossible together",
       of_spruce("nu12 = 2\nnu13 = 2\nnu23 = 1.3"),
       {":11: material.spruce", "impossible material"}},
      {"negative modulus", of_spruce("E1 = -11"), {":12: material.spruce.E1 = -11", "GPa"}},
      {"modulus in pascal", of_spruce("E1 = 11e9"), {":12: material.spruce.E1 = 1.1e+10", "at most 1500"}},
      {"no density", of_spruce("density = 0"), {":12: material.spruce.density = 0", "at least 1"}},
      {"five losses for six",
       of_spruce("loss = [1, 1, 1, 1, 1]"),
       {":12: material.spruce.loss", "a list of 6 numbers"}},
      {"negative loss", of_spruce("loss = [1, 1, 1, 1, 1, -1]"), {":12: material.spruce.loss", "at least 0"}},
      {"material half given",
       solid_plate() + "[material.oak]\n" + own + "E3 = 1\n",
       {":17: material.oak.E3 = 1", "missing: G13, G23, nu13, nu23"}},
      {"material without density",
       solid_plate() + "[material.oak]\nE1 = 10\nE2 = 1\nG12 = 1\nnu12 = 0.3\n",
       {":11: material.oak.density", "missing; must be a number in kg/m3"}},
      {"element wider than the plate",
       plate_start() + "[thickness]\nvalue = 2.5\n[layup]\nsolid = \"spruce\"\n[mesh]\nsize = 101\n",
       {":10: mesh.size = 101", "at most 100 mm"}},
      {"billions of unknowns",
       plate_start() + "[thickness]\nvalue = 2.5\n[layup]\nsolid = \"spruce\"\n[mesh]\nsize = 0.01\n",
       {":10: mesh.size = 0.01", "unknowns", "mm or more"}},
      {"negative mesh size", solid_plate() + "", {"--set: mesh.size = -3", "at least 0.01"}, {"--set", "mesh.size=-3"}},
      {"more modes than unknowns", solid_plate(), {"--count", "200"}, {"--count", "201"}},
  };
}

} // namespace plate::test
