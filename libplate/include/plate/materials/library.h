// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/materials/material.h>

#include <span>
#include <string_view>

namespace plate
{

/// A material with what it is and where its constants come from.
struct LibraryMaterial
{
  Material material;
  std::string_view description; ///< one line
  /// Source of the constants, with the marks "published", "from memory" (of a published table, not read again), "common
  /// practice" (no single source: good to begin with, never to check against) and "assumed" (not measured).
  std::string_view source;
  /// Source of the strengths, with the same marks: they depend on batch and process more than any constant does.
  std::string_view strength_source = "";
};

/// Materials that may be used without measuring one's own: typical values to begin with, no promise about a batch.
///
/// Woods (1 = L, 2 = R, 3 = T, at 12 % moisture), plies of fibre in epoxy, cores. Cores have strengths in shear through
/// the thickness only: in the plane their skins decide.
[[nodiscard]] std::span<const LibraryMaterial> material_library();

/// The library's material of that name; null if there is none.
[[nodiscard]] const Material* find_material(std::string_view name);

} // namespace plate
