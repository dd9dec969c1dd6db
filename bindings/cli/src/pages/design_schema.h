// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>

namespace plate
{

/// JSON Schema (2020-12) of the design file, from the known keys, for editors that complete and check TOML.
///
/// It is a first check: rules between tables, the physics and the geometry are checked by plate itself.
[[nodiscard]] std::string design_schema();

/// The same of match problems.
[[nodiscard]] std::string match_schema();

} // namespace plate
