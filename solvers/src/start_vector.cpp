// SPDX-License-Identifier: MPL-2.0
#include "start_vector.h"

#include <cstdint>

namespace plate
{

Eigen::VectorXd start_vector(Eigen::Index size)
{
  Eigen::VectorXd v(size);
  std::uint32_t state = 12345;
  for (double& value : v)
  {
    state = 1664525u * state + 1013904223u; // linear congruential, [Knuth1998] sec. 3.3.4
    value = static_cast<double>(state) / 4294967296.0 - 0.5;
  }
  return v;
}

} // namespace plate
