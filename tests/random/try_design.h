// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "random_design.h"

#include <string>

namespace plate::test
{

/// How a design ended.
enum class Ending
{
  modes,   ///< six rigid modes, all elastic ones, mesh area right to 0.1 %
  refused, ///< a clear error
  failed   ///< anything else: a crash, too long, a numerical failure, a wrong area
};

struct Trial
{
  Ending ending;
  std::string says; ///< the error, or what is wrong; empty for modes
};

/// Takes a design from its text to its modes in a process of its own, which may use 10 s of processor time.
[[nodiscard]] Trial try_design(const RandomDesign& drawn);

} // namespace plate::test
