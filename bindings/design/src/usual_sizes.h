// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

/// What is usual on a violin, a viola or a cello, whichever has bodies of that length.
///
/// @param length  of the body [m]
template <class Value>
Value usual_by_length(double length, const Value& violin, const Value& viola, const Value& cello)
{
  constexpr double longest_violin = 0.37; // [m]
  constexpr double longest_viola = 0.6;   // [m]
  if (length < longest_violin)
    return violin;
  return length < longest_viola ? viola : cello;
}

} // namespace plate
