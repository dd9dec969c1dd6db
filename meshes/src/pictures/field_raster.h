// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "canvas.h"
#include "contour.h"
#include "frame.h"

#include <span>
#include <vector>

namespace plate
{

/// A field at the pixels of a part of the page.
struct FieldRaster
{
  Eigen::Vector2d corner;     ///< top left, whole picture units so that pixels fall on those of the page
  int width = 0;              ///< pixels
  int height = 0;             ///< pixels
  std::vector<double> values; ///< (width x height) row by row; NaN off the plate [unit of the field]
};

/// Samples a field where the frame puts it, linear within the small triangles of its surface. The plate grows by two
/// pixels beyond its edge, which a clip along the true edge cuts off: no seam shows there.
[[nodiscard]] FieldRaster rasterise(const ContouredField& field, const Frame& frame, double pixels_per_unit);

/// Colours of a raster: values from `low` to `high` onto a map.
[[nodiscard]] PixelImage coloured(const FieldRaster& raster, const ColourMap& map, double low, double high);

} // namespace plate
