// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/solvers/studies/load.h>

namespace plate
{

/// Adds the cases of the plate off its rim.
void add_bare_cases(const Model& model, const LoadSetup& setup, LoadStudy& study);

} // namespace plate
