// SPDX-License-Identifier: MPL-2.0
#include "measures.h"

#include <array>
#include <cstddef>

namespace plate
{
namespace
{

// Usual measures of makers: common practice, no source. Chosen inside them so that the free top of wood has M1, M2 and
// M5 and the mass that makers expect; the plies of the laminate so that its M2 and M5 come near those of the wood.
constexpr std::array<FamilyMeasures, 3> families = {
    {{.name = "violin",
      .length = {355, "355"},
      .lower_bout = {206, "206"},
      .centre_bout = {112, "112"},
      .upper_bout = {168, "168"},
      .overall_arching = {15.5, "15.5"},
      .centre = {3.0, "3.0"},
      .bouts = {2.7, "2.7"},
      .channel = {2.4, "2.4"},
      .edge = {4.0, "4.0"},
      .hole = {75, "75"},
      .stop = {195, "195"},
      .string_length = {328, "325 to 330"},
      .bridge_feet = {30, "about a twelfth of the length"},
      .bar_length = {270, "270"},
      .bar_width = {5.5, "5.5"},
      .bar_height = {12, "11 to 13"},
      .bar_offset = {15, "a seventh of the half width of the bouts, under the bass foot"},
      .flax = 0.15,
      .core = 0.9},
     {.name = "viola",
      .length = {410, "390, 405 to 410, 430"},
      .lower_bout = {236, "228, 236, 250"},
      .centre_bout = {131, "127, 131, 140"},
      .upper_bout = {193, "188, 193, 200"},
      .overall_arching = {16, "16 to 18"},
      .centre = {3.1, "3.1 to 3.3"},
      .bouts = {2.5, "2.5 to 3"},
      .channel = {2.3, "2.3 to 2.8"},
      .edge = {3.9, "3.9 to 4.1"},
      .hole = {80, "78 to 82"},
      .stop = {225, "219 to 230"},
      .string_length = {375, "370 to 380"},
      .bridge_feet = {34, "about a twelfth of the length"},
      .bar_length = {330, "80 less than the top"},
      .bar_width = {5.5, "5.5 to 7"},
      .bar_height = {13, "13 to 15"},
      .bar_offset = {17, "a seventh of the half width of the bouts, under the bass foot"},
      .flax = 0.15,
      .core = 0.8},
     {.name = "cello",
      .length = {757, "755 to 760"},
      .lower_bout = {440, "440"},
      .centre_bout = {230, "230"},
      .upper_bout = {340, "340"},
      .overall_arching = {26.5, "24 to 28"},
      .centre = {4.8, "4.5 to 5.5"},
      .bouts = {4.2, "3.8 to 4.5"},
      .channel = {3.5, "3.5"},
      .edge = {4.5, "4.5 to 5"},
      .hole = {140, "135 to 145"},
      .stop = {400, "400"},
      .string_length = {695, "690 to 700"},
      .bridge_feet = {64, "about a twelfth of the length"},
      .bar_length = {590, "580 to 600"},
      .bar_width = {10, "10 to 11"},
      .bar_height = {23, "22 to 26"},
      .bar_offset = {32, "a seventh of the half width of the bouts, under the bass foot"},
      .flax = 0.25,
      .core = 1.4}}};

} // namespace

const FamilyMeasures& family_measures(InstrumentFamily family)
{
  return families[static_cast<std::size_t>(family)];
}

} // namespace plate
