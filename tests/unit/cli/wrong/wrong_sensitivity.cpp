// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

namespace plate::test
{
namespace
{

WrongFile asked(const std::string& name, std::vector<std::string> options, std::vector<std::string> says)
{
  return {name, solid_plate(), std::move(says), std::move(options)};
}

} // namespace

std::vector<WrongFile> wrong_sensitivity()
{
  return {
      asked("an unknown key", {"--key", "thickness.vlaue"}, {"thickness.vlaue", "nearest: thickness.value"}),
      asked("a key that is no number", {"--key", "layup.solid"}, {"layup.solid", "not a numeric key"}),
      asked("a table", {"--key", "thickness"}, {"thickness", "is a table"}),
      asked("a part that is not there", {"--key", "bar.height"}, {"bar"}),
      asked("a list entry that is not there", {"--key", "mass.1.grams"}, {"mass.1.grams", "not given in the file"}),
      asked("a measure of the mesh", {"--key", "mesh.size"}, {"mesh.size = 30", "not of the plate"}),
      asked("the humidity of no air", {"--key", "surroundings.humidity"},
            {"humidity", "--set surroundings.humidity=50"}),
      {"the edge of a patch",
       solid_plate() + "[[patch]]\nshape = \"ellipse\"\ncentre = [0, 0]\naxes = [80, 50]\n"
                       "plies = [{ material = \"carbon_ud\", thickness = 0.1 }]\n",
       {":13: patch.1.centre.1 = 0", "moves through the mesh in jumps", "plate sweep"},
       {"--key", "patch.1.centre.1"}},
      asked("a key twice", {"--key", "thickness.value", "--key", "thickness.value"}, {"is given twice"}),
      asked("a map of no mode", {"--map", "M7"}, {"--map M7", "a number from 1 to 12"}),
      asked("a map beyond the list", {"--map", "5", "--count", "4"}, {"--map 5", "a number from 1 to 4"}),
      asked("no mode to leave", {"--leave", ""}, {"--leave", "is missing"}),
      asked("a mode to leave that is none", {"--leave", "x"}, {"--leave x", "no such mode"}),
  };
}

} // namespace plate::test
