// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>
#include <vector>

namespace plate
{

/// Refuses a list whose frequencies are those of a design in another unit.
///
/// @param list    title of the list
/// @param design  title of the design
/// @param ratios  of measured to computed frequencies, mode by mode; at least one
/// @throws InvalidInput if most of them are about those of rad/s or kHz
void check_measured_unit(const std::string& list, const std::string& design, std::vector<double> ratios);

} // namespace plate
