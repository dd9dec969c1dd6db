// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "canvas.h"

#include <cstddef>

namespace plate
{

inline constexpr std::size_t num_curve_pens = 6;

/// Pen of a curve among others: a colour and a pattern of its own, so that it is told apart in grey too. The index
/// wraps around.
[[nodiscard]] Pen curve_pen(std::size_t index);

} // namespace plate
