// SPDX-License-Identifier: MPL-2.0
#include "body_mismatch.h"

#include <plate/core/error.h>

using namespace plate;
using namespace plate::test;

TEST_CASE("derivatives of a body by a key of a plate, of its ribs and of its air are those of full solves")
{
  CHECK(greatest_mismatch({{"top.thickness.value", 3.0}, {"ribs.height", 42.0}}, 3e-4) < 1e-5);
  CHECK(greatest_mismatch({{"air.temperature", 20.0}}, 1e-3) < 1e-6);
}

TEST_CASE("bodies of other parts are no neighbours")
{
  // Without linings; beside it there are some.
  BodyDocument document = arched_box(slots);
  document.set_number("linings.height", 0.0);
  BodyDesignModel design(document, {"linings.height"});
  const FullSolve base = solve(design.build(std::vector<double>{0.0}));
  const std::vector<SensitivityParameter> height = {{.value = 0.0, .scale = 40.0}};
  CHECK_THROWS_AS(static_cast<void>(body_sensitivities(design, height, base.solved(), {.num_modes = num_modes})),
                  InvalidInput);
}
