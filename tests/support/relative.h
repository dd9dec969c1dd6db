// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <doctest/doctest.h>

namespace plate::test
{

/// A value to be met to a part of itself.
///
/// doctest's Approx alone allows epsilon times one *plus* the value: what is small in SI, a thickness or a mass, would
/// pass whatever it is.
/// @param value  not zero
[[nodiscard]] inline doctest::Approx relative(double value, double epsilon = 1e-9)
{
  return doctest::Approx(value).epsilon(epsilon).scale(0.0);
}

} // namespace plate::test
