// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/modal_memory.h>

#include <algorithm>
#include <cmath>

namespace plate
{

double modal_memory(double num_unknowns, int num_modes)
{
  constexpr double program = 60e6;    // libraries and what does not grow [bytes]
  constexpr double matrices = 2170.0; // per unknown [bytes]
  constexpr double fill = 107.0;      // per unknown and doubling of their number [bytes]
  constexpr double vectors = 32.0;    // per unknown and mode: Lanczos keeps more than the modes themselves [bytes]
  return program + num_unknowns * (matrices + fill * std::log2(std::max(num_unknowns, 2.0)) + vectors * num_modes);
}

} // namespace plate
