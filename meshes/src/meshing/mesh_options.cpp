// SPDX-License-Identifier: MPL-2.0
#include "mesh_options.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{

MeshOptions with_defaults(const MeshOptions& options, const PlateGeometry& geometry)
{
  for (const auto& [what, value] : {std::pair{"size", options.size}, {"strip width", options.strip_width}})
    if (!(std::isfinite(value) && value >= 0.0))
      throw InvalidInput(message("mesh: ", what, " must be positive, or 0 for the default; got ", value * 1e3, " mm"));
  MeshOptions result = options;
  if (options.size == 0.0)
    result.size = std::min(outline_length(geometry.outline), 2.0 * outline_width(geometry.outline)) / 32.0;
  return result;
}

} // namespace plate
