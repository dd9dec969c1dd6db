// SPDX-License-Identifier: MPL-2.0
#include "body_shapes.h"

#include <algorithm>

namespace plate
{

BodyShapes body_shapes(const BodyResult& result, Eigen::Index count)
{
  const auto shapes = [&](std::size_t part)
  {
    const PartSystem& system = result.system.parts[part];
    return mode_shapes(result.model.body.parts[part].model, system.dofs,
                       system.from_body * result.modes.shapes.leftCols(std::min(count, result.modes.shapes.cols())));
  };
  return {.plates = {shapes(BodyModel::top), shapes(BodyModel::back)}};
}

ShapeProducts shape_products(const BodyShapes& reference, const BodyShapes& other)
{
  ShapeProducts sum = shape_products(reference.plates[0], other.plates[0]);
  const ShapeProducts back = shape_products(reference.plates[1], other.plates[1]);
  sum.reference += back.reference;
  sum.cross += back.cross;
  sum.other += back.other;
  sum.share_left_out = std::max(sum.share_left_out, back.share_left_out);
  return sum;
}

} // namespace plate
