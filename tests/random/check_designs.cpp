// SPDX-License-Identifier: MPL-2.0
#include "check_designs.h"

#include "try_design.h"

#include <doctest/doctest.h>

namespace plate::test
{

void check_designs(std::uint64_t first_seed, int count)
{
  int num_modes = 0;
  for (int i = 0; i < count; ++i)
  {
    const RandomDesign drawn = draw_design(first_seed + static_cast<std::uint64_t>(i));
    const Trial trial = try_design(drawn);
    CAPTURE(drawn.seed);
    CAPTURE(drawn.text);
    CAPTURE(trial.says);
    CHECK(trial.ending != Ending::failed);
    if (trial.ending == Ending::refused)
      CHECK(trial.says.find("random.toml") == 0);
    num_modes += trial.ending == Ending::modes ? 1 : 0;
  }
  MESSAGE(num_modes << " of " << count << " designs ended in modes, the others in a clear error");
  CHECK(4 * num_modes > count); // or the generator draws little but nonsense
}

} // namespace plate::test
