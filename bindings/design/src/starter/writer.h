// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>
#include <vector>

namespace plate
{

/// One line of a design file to be written.
struct StarterLine
{
  std::string key;       ///< dotted, list entries counted from 1, e.g. "soundhole.1.length"
  std::string value;     ///< as in a design file
  std::string note = {}; ///< added to the comment
  bool optional = false; ///< commented out, with this value in place of the key's default
};

/// The lines as a design file with unit and meaning of each key behind it, in the order of the known keys.
///
/// Other keys of the same tables, and tables that have no line, are written as comments with their defaults; of
/// materials the lines alone are written.
/// @param plies  the value of layup.plies, which has no key of its own; empty for none
[[nodiscard]] std::string write_starter(const std::vector<StarterLine>& lines, const std::string& plies);

} // namespace plate
