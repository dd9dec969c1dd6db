// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/units.h>

#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// One ply that a laminate code asks for.
struct CodePly
{
  Angle angle = {};     ///< from the reference axis, positive from x to y seen from outside
  std::string material; ///< empty: the ply material of the layup; else a ply of its own, e.g. "core"
};

/// Longest laminate a code may describe; more is taken for a slip of the pen.
inline constexpr int max_code_plies = 1000;

/// Expands the composite trade's standard orientation code into its plies, inside first.
///
/// `[0/90/±45]s`: plies between brackets, separated by `/`; angles in degrees, -360 to 360. `±` (or `+-`) stands for
/// two plies, `∓` (or `-+`) for two with the minus first. `90_3` is three plies at 90; `(0/90)2` repeats a group.
/// After the closing bracket: a number repeats the whole, `s` mirrors it (`[0/60/-60]2s`: repeated twice, then
/// mirrored), `T` says that the code is complete as it stands. `~` before the last ply of a symmetric code is the
/// overbar of the standard: the middle ply is not repeated, `[0/90/~0]s` = 0/90/0/90/0. A name stands for one ply of
/// that material at 0 degrees: `[0/90/core]s`, `[0/~core]s`; all of its letters, digits, `_` and `-` belong to it.
///
/// @param  code  UTF-8, at most 4000 bytes
/// @throws InvalidInput naming the column (characters from 1), what stands there and what is allowed
/// @source [ASTM-D6507]; pinned by tests/unit/laminates/laminate_code_test.cpp
[[nodiscard]] std::vector<CodePly> parse_laminate_code(std::string_view code);

} // namespace plate
