// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/materials/library.h>

#include <vector>

namespace plate
{

/// Parts of the library, put together in library.cpp.
[[nodiscard]] std::vector<LibraryMaterial> library_woods();
[[nodiscard]] std::vector<LibraryMaterial> library_plies();
[[nodiscard]] std::vector<LibraryMaterial> library_cores();

} // namespace plate
