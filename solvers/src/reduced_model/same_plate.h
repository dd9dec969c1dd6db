// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>

namespace plate::reduced
{

/// Makes sure that two models differ only by what a reduced model takes as a parameter.
///
/// @throws InvalidInput naming what moves with the parameters
void check_same_plate(const Model& reference, const Model& model);

} // namespace plate::reduced
