// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "sample_models.h"

#include <plate/validation/sample_cavities.h>

namespace plate::test
{

// Cavities of the validation cases serve other tests too.
using validation::cavity_over;
using validation::plain_air;

/// Box of 350 x 200 x 35 mm.
inline CavityMesh box(int cells_x, int cells_y)
{
  return cavity_over(rectangle(0.35, 0.2, cells_x, cells_y, 1e-3), [](double, double) { return 0.035; });
}

} // namespace plate::test
