// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <span>
#include <string>

namespace plate
{

enum class InstrumentFamily
{
  violin,
  viola,
  cello
};

enum class PlateMake
{
  wood,
  laminate
};

/// Names of the families and makes, in the order of the enumerations, as a user types them.
[[nodiscard]] std::span<const std::string> family_names();
[[nodiscard]] std::span<const std::string> make_names();

/// A design file of a top to begin with: every key that matters with unit and meaning, the optional ones commented out.
///
/// Measures are the trade's usual ones, materials typical, the layup chosen to come near the wood's M2 and M5: common
/// practice and invented data, no instrument that exists. The modes are pinned by tests/unit/cli/start_test.cpp.
[[nodiscard]] std::string starter_design(InstrumentFamily family, PlateMake make);

} // namespace plate
