// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/fit_report.h>

#include <span>
#include <vector>

namespace plate
{

/// Report on a fit from the residuals of all its points.
///
/// @param used  for each residual whether its point was used; the others are the outliers
[[nodiscard]] FitReport summarise(std::span<const FitResidual> residuals, const std::vector<char>& used);

} // namespace plate
