// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/laminates/stack_supplies.h>

#include <functional>

namespace plate::match
{

/// Turns plies of a laminate, each by at most the step between the angles of the supplies, to the least mismatch
/// nearby.
///
/// A symmetric laminate stays so; a balanced one too: plies of one material at opposite angles turn together, those at
/// 0 and 90 degrees not at all. Cores lie as they are.
/// @param mismatch  what is made small, a smooth function of the angles but for modes that change places
/// @source subspace simplex [Rowan1990], as in NLopt
[[nodiscard]] Laminate refined_angles(const Laminate& laminate, const StackSupplies& supplies,
                                      const std::function<double(const Laminate&)>& mismatch);

} // namespace plate::match
