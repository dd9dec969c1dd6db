// SPDX-License-Identifier: MPL-2.0
// Derivatives of the modes of a body with its air beside differences of full solves on the same mesh, moved.
#pragma once

#include "sample_body.h"

#include <plate/design/body_design_model.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace plate::test
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
inline double greatest_mismatch(const std::vector<ScaledKey>& keys, double step,
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

} // namespace plate::test
