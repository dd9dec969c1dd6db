// SPDX-License-Identifier: MPL-2.0
// The error bars of all the plates at three mesh sizes.
#include "error_study.h"

#include <doctest/doctest.h>

using namespace plate::test;

TEST_CASE("error bars cover the true error in 95 % and are below ten times it in 80 % of the modes")
{
  const BarCount sum =
      study_error_bars(study_cases(), {.size_factors = {1.0, 1.5, 2.2}, .overkill = 3.0, .num_modes = 12});
  CHECK(sum.covered >= 0.95 * sum.modes);
  CHECK(sum.tight >= 0.80 * sum.modes);
}
