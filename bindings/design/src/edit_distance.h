// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string_view>

namespace plate
{

/// Number of letters to insert, delete, change or swap with their neighbour to turn one word into the other.
///
/// Upper and lower case count as equal: a wrong case is the smallest slip.
[[nodiscard]] int edit_distance(std::string_view a, std::string_view b);

/// The same, but a word cut short or carried on ("arch" for "arching") is one slip, not one for each letter.
[[nodiscard]] int slip_distance(std::string_view a, std::string_view b);

} // namespace plate
