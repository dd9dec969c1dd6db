// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "reduced_system.h"
#include "small_modes.h"

namespace plate::reduced
{

/// Modes of a reduced system at one point with what their errors are estimated from.
struct EstimatedModes
{
  SmallModes modes;                ///< those asked for
  Eigen::VectorXd residual_errors; ///< relative error of the frequency from the residual, before calibration (n) [-]
  Eigen::VectorXd other_errors;    ///< from what the combination of terms misses, and rounding (n) [-]
};

/// @param reference  of the middle of the box, in whose energies misfits are given
/// @param shift      of the energy the sketch was made for [1/s2]
/// @param num_spare  further modes, which tell how far the modes are from those the basis does not hold
[[nodiscard]] EstimatedModes estimated_modes(const ReducedSystem& system, const Coefficients& coefficients,
                                             const ReducedPair& reference, double shift, Eigen::Index num_rigid,
                                             Eigen::Index num_modes, Eigen::Index num_spare);

} // namespace plate::reduced
