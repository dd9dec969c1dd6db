// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/body_document.h>
#include <plate/design/design_document.h>

#include <string>
#include <vector>

namespace plate
{

/// A key of a design by which modes are differentiated.
struct DerivedKey
{
  std::string key;
  std::string unit; ///< empty for pure numbers
  double value;     ///< [unit]
  double scale;     ///< see SensitivityParameter [unit]
  double change;    ///< of the size that is met in a workshop [unit]
};

/// What workshop changes are, in words.
inline constexpr const char* workshop_changes =
    "1 degree, 0.1 mm (plies 1 %), 0.1 g, 1 deg C, 1 % of humidity, 1 % of all else";

/// The keys of a study.
struct DerivedKeys
{
  std::vector<DerivedKey> keys;
  std::vector<std::string> left_out; ///< of the file, with an effect that has no derivative here
};

/// The keys asked for; if none is, those that the file gives and that may change its modes.
///
/// What moves edges of patches or of end blocks is left out: they cut triangles whose points change sides one after
/// the other, in jumps.
///
/// @throws DesignError if a key asked for is not numeric, has no value, or no derivative
[[nodiscard]] DerivedKeys derived_keys(const DesignDocument& document, const std::vector<std::string>& asked);

/// The same of a body and its plates. Both plates have one outline: keys of top.outline count for the back's too, and
/// those of back.outline are none of their own.
[[nodiscard]] DerivedKeys derived_keys(const BodyDocument& document, const std::vector<std::string>& asked);

} // namespace plate
