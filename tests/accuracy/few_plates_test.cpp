// SPDX-License-Identifier: MPL-2.0
// The error bars of some plates on coarse meshes, where the truth is cheap.
#include "error_study.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>

using namespace plate::test;

TEST_CASE("error bars of coarse plates cover the true error and are no more than ten times as long")
{
  constexpr std::array<std::string_view, 4> names = {"arched spruce, carved", "flat thin carbon ellipse",
                                                     "arched spruce with clay", "viola with f-holes and bar"};
  const std::vector<StudyCase> all = study_cases();
  std::vector<StudyCase> plates;
  std::copy_if(all.begin(), all.end(), std::back_inserter(plates),
               [&](const StudyCase& plate)
               { return std::find(names.begin(), names.end(), plate.name) != names.end(); });
  REQUIRE(plates.size() == names.size());
  const BarCount sum = study_error_bars(plates, {.size_factors = {1.5, 2.2}, .overkill = 2.0, .num_modes = 8});
  CHECK(sum.covered >= 0.95 * sum.modes);
  CHECK(sum.tight >= 0.80 * sum.modes);
}
