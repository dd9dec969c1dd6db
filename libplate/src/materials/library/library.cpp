// SPDX-License-Identifier: MPL-2.0
#include "parts.h"

#include <algorithm>

namespace plate
{

std::span<const LibraryMaterial> material_library()
{
  static const std::vector<LibraryMaterial> library = []
  {
    std::vector<LibraryMaterial> all;
    for (const std::vector<LibraryMaterial>& part : {library_woods(), library_plies(), library_cores()})
      all.insert(all.end(), part.begin(), part.end());
    return all;
  }();
  return library;
}

const Material* find_material(std::string_view name)
{
  const std::span<const LibraryMaterial> library = material_library();
  const auto found =
      std::find_if(library.begin(), library.end(), [&](const LibraryMaterial& m) { return m.material.name == name; });
  return found == library.end() ? nullptr : &found->material;
}

} // namespace plate
