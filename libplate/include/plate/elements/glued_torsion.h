// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <span>

namespace plate
{

/// A layer of a cross-section under torsion; both shear moduli are between the length and a direction of the section.
struct TorsionLayer
{
  double thickness; ///< [m]
  double G_across;  ///< along the layer [Pa]
  double G_normal;  ///< across the layer [Pa]
};

/// What a bar glued under a wide strip of layers adds to the torsional stiffness of the strip [N m2].
///
/// Saint-Venant torsion of both cross-sections by biquadratic finite elements for the warping, on one grid that narrows
/// towards the corners between bar and strip; within 0.2 %, from above. Without layers: the bar alone.
/// @param width  of the bar [m]
/// @param bar    its height, G_across along its width, G_normal along its height
/// @param strip  layers from the glue line upward
/// Cost: about a millisecond.
/// @source [Lekhnitskii1968] sec. 41; pinned by tests/unit/elements/glued_torsion_test.cpp
[[nodiscard]] double glued_torsional_stiffness(double width, const TorsionLayer& bar,
                                               std::span<const TorsionLayer> strip);

} // namespace plate
