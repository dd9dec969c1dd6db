// SPDX-License-Identifier: MPL-2.0
#include "body_shapes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{
namespace
{

ModeShapes part_shapes(const BodyResult& result, std::size_t part, Eigen::Index count)
{
  const PartSystem& system = result.system.parts[part];
  return mode_shapes(result.model.body.parts[part].model, system.dofs,
                     system.from_body * result.modes.shapes.leftCols(count));
}

ModeShapes air_shapes(const BodyResult& result, Eigen::Index count)
{
  ShellMesh planform = result.model.cavity.planform;
  for (std::size_t node = 0; node < planform.nodes.size(); ++node)
  {
    const auto i = static_cast<Eigen::Index>(node);
    planform.thickness[node] = result.model.cavity.top(i) - result.model.cavity.back(i);
  }
  const Eigen::VectorXd w = 2.0 * std::numbers::pi * result.modes.coupled.frequencies_hz.head(count);
  const Air& air = result.air;
  return scalar_shapes(planform, result.modes.pressures.leftCols(count) *
                                     (std::sqrt(air.density) * air.sound_speed * w).cwiseInverse().asDiagonal());
}

} // namespace

BodyShapes body_shapes(const BodyResult& result, Eigen::Index count)
{
  const Eigen::Index some = std::min(count, result.modes.shapes.cols());
  return {.top = part_shapes(result, BodyModel::top, some),
          .back = part_shapes(result, BodyModel::back, some),
          .air = air_shapes(result, some)};
}

ShapeProducts shape_products(const BodyShapes& reference, const BodyShapes& other)
{
  ShapeProducts sum = shape_products(reference.top, other.top);
  const double top_mass = reference.top.weight.sum();
  const double back_mass = reference.back.weight.sum();
  const ShapeProducts back = shape_products(reference.back, other.back);
  sum.share_left_out = (top_mass * sum.share_left_out + back_mass * back.share_left_out) / (top_mass + back_mass);
  for (const ShapeProducts& more : {back, shape_products(reference.air, other.air)})
  {
    sum.reference += more.reference;
    sum.cross += more.cross;
    sum.other += more.other;
  }
  return sum;
}

} // namespace plate
