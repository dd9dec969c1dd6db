// SPDX-License-Identifier: MPL-2.0
#include "body_mismatch.h"

using namespace plate;
using namespace plate::test;

TEST_CASE("derivatives of a body by its materials, thicknesses and masses are those of full solves")
{
  CHECK(greatest_mismatch({{"top.material.spruce.E1", 11.0},
                           {"material.maple.density", 620.0},
                           {"top.bar.height", 10.0},
                           {"neck.mass", 150.0},
                           {"neck.centre.1", 50.0},
                           {"bridge.mass", 3.0}},
                          3e-4) < 1e-5);
}

TEST_CASE("derivatives of a body by measures that move its walls are those of full solves")
{
  CHECK(greatest_mismatch({{"ribs.thickness", 1.2}, {"soundpost.diameter", 6.5}, {"top.arching.height", 8.0}}, 2e-4) <
        1e-5);
  // 3e-5 off whatever the steps and the number of motions; what it is was not found.
  CHECK(greatest_mismatch({{"linings.height", 7.0}}, 2e-4) < 5e-5);
}

TEST_CASE("derivatives of a body by keys that move its planform are those of full solves")
{
  // Points at which the flow from the walls is summed cross the edges of holes one by one.
  CHECK(greatest_mismatch({{"ribs.overhang", 3.0}}, 2e-4) < 1e-3);
  // Without blocks, whose footprints would move through the meshes of the plates.
  const BodyDocument bare = arched_box(slots, "[blocks]\nend = [0, 0]\ncorner = [0, 0]\n");
  CHECK(greatest_mismatch({{"top.outline.length", 350.0}}, 2e-4, bare) < 1e-3);
}

TEST_CASE("derivatives of a body by its holes are those of full solves as finely as the flow through them is known")
{
  CHECK(greatest_mismatch({{"top.soundhole.1.length", 70.0}, {"top.soundhole.1.width", 8.0}}, 2e-2) < 5e-3);
}
