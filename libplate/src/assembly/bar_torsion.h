// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>

namespace plate
{

/// Table of what a bar adds to the torsional stiffness of the plate, at the ends and bends of its profile and between.
///
/// @param covers  bars and patches of all triangles
[[nodiscard]] BarTorsion bar_torsion(const Model& model, std::size_t bar, const std::vector<TriangleCover>& covers);

} // namespace plate
