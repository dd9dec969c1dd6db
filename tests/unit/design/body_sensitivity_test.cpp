// SPDX-License-Identifier: MPL-2.0
// Derivatives of the modes of a body with its air beside differences of full solves on the same mesh, moved.
#include "sample_body.h"

#include <plate/core/error.h>
#include <plate/design/body_design_model.h>

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace plate;
using namespace plate::test;

namespace
{

/// A key and the change that makes quite another body.
struct ScaledKey
{
  std::string key;
  double scale; ///< [unit of the key]
};

/// Greatest difference of the derivatives by some keys from those of full solves, over the greatest derivative of each.
///
/// @param step  of the full solves, as part of the scale
double greatest_mismatch(const std::vector<ScaledKey>& keys, double step,
                         const BodyDocument& document = arched_box(slots))
{
  std::vector<std::string> names;
  std::vector<double> point;
  std::vector<SensitivityParameter> parameters;
  for (const auto& [key, scale] : keys)
  {
    names.push_back(key);
    point.push_back(document.number(key));
    parameters.push_back({.value = point.back(), .scale = scale});
  }
  BodyDesignModel design(document, names);
  const FullSolve base = solve(design.build(point));
  const BodySensitivityResult result =
      body_sensitivities(design, parameters, base.solved(), {.num_modes = num_modes}, body_options.pressure_degree);
  double greatest = 0.0;
  for (std::size_t k = 0; k < keys.size(); ++k)
  {
    const auto at = [&](double steps)
    {
      std::vector<double> other = point;
      other[k] += steps * step * keys[k].scale;
      return solve(design.build(other)).frequencies_hz();
    };
    const Eigen::VectorXd slopes = (at(1) - at(-1)) / (2.0 * step * keys[k].scale);
    const double mismatch =
        (result.parameters[k].slopes_hz - slopes).cwiseAbs().maxCoeff() / slopes.cwiseAbs().maxCoeff();
    CAPTURE(keys[k].key);
    CHECK(result.parameters[k].acts);
    greatest = std::max(greatest, mismatch);
  }
  return greatest;
}

} // namespace

TEST_CASE("derivatives of a body by its materials, thicknesses and masses are those of full solves")
{
  CHECK(greatest_mismatch({{"top.material.spruce.E1", 11.0},
                           {"material.maple.density", 620.0},
                           {"top.thickness.value", 3.0},
                           {"top.bar.height", 10.0},
                           {"neck.mass", 150.0},
                           {"neck.centre.1", 50.0},
                           {"bridge.mass", 3.0}},
                          3e-4) < 1e-5);
}

TEST_CASE("derivatives of a body by measures that move its walls are those of full solves")
{
  CHECK(greatest_mismatch(
            {{"ribs.height", 42.0}, {"ribs.thickness", 1.2}, {"soundpost.diameter", 6.5}, {"top.arching.height", 8.0}},
            2e-4) < 1e-5);
  // 3e-5 off whatever the steps and the number of motions; what it is was not found.
  CHECK(greatest_mismatch({{"linings.height", 7.0}}, 2e-4) < 5e-5);
}

TEST_CASE("derivatives of a body by the temperature of its air are those of full solves")
{
  CHECK(greatest_mismatch({{"air.temperature", 20.0}}, 1e-3) < 1e-6);
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
