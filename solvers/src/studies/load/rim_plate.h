// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/solvers/studies/load.h>

namespace plate
{

/// Adds the cases of the plate on its rim, buckling and the modes under the strings.
void add_rim_cases(const Model& model, const LoadSetup& setup, LoadStudy& study);

} // namespace plate
