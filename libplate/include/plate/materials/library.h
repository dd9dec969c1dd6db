// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/materials/material.h>

#include <span>
#include <string_view>

namespace plate
{

/// Materials that may be used without measuring one's own: typical values to begin with, no promise about a batch.
///
/// spruce, maple (wood: 1 = L, 2 = R, 3 = T, 12 % moisture), carbon_ud, flax_ud (unidirectional fibre in epoxy),
/// balsa (end-grain core). Sources and assumptions stand beside each value in materials/library.cpp.
[[nodiscard]] std::span<const Material> material_library();

/// The library's material of that name; null if there is none.
[[nodiscard]] const Material* find_material(std::string_view name);

} // namespace plate
