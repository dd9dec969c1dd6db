// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "run_plate.h"

#include <string>

namespace plate::test
{

/// A flat top with two slots; a flat back of the same outline is quick_design().
[[nodiscard]] inline std::string quick_top()
{
  return quick_design() + "[setup]\nstop = 175\nbridge_feet = 30\n"
                          "[[soundhole]]\nkind = \"slot\"\ncentre = [0, 60]\nlength = 70\nwidth = 6\n";
}

/// A closed box of them, 40 mm high, ribs 1 mm thick without linings and blocks, solved in a moment; 11 lines.
[[nodiscard]] inline std::string quick_box()
{
  return "title = \"Box\"\n[body]\ntop = \"top.toml\"\nback = \"back.toml\"\n[ribs]\nheight = 40\nthickness = 1\n"
         "overhang = 2.5\n[mesh]\nsize = 40\n";
}

/// Writes all files of the box, its own with further lines, and returns the path of its own.
inline std::string write_box(const Workshop& shop, const std::string& more = "[linings]\nheight = 0\n[blocks]\nend = "
                                                                             "[0, 0]\ncorner = [0, 0]\n")
{
  static_cast<void>(shop.write("top.toml", quick_top()));
  static_cast<void>(shop.write("back.toml", quick_design()));
  return shop.write("box.toml", quick_box() + more);
}

} // namespace plate::test
