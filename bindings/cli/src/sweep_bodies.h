// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/body_document.h>
#include <plate/solvers/studies/sweep.h>

#include <string>
#include <vector>

namespace plate
{

/// Modes of a body with its air over a grid of keys, followed by the shapes of top and back and the pressure.
///
/// Every point is meshed and solved in full. Tracks carry the names of the first point; their pictures show the top.
/// @param points  values of the keys, the last key running fastest
/// @param row     points per row of the grid
/// @param options progress and numbers of modes
[[nodiscard]] SweepResult sweep_bodies(const BodyDocument& document, const std::vector<std::string>& keys,
                                       const std::vector<std::vector<double>>& points, std::size_t row,
                                       const SweepOptions& options);

} // namespace plate
