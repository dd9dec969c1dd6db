// SPDX-License-Identifier: MPL-2.0
// Plates glued at an angle.
#include "modal_values.h"

#include "simple_support.h"

#include <plate/assembly/body.h>
#include <plate/validation/sample_models.h>

#include <numbers>

namespace plate::validation
{
namespace
{

constexpr double side = 1.27;         // of a cell [m]
constexpr double length = 2.0 * side; // [m]
constexpr double thickness = 12.7e-3; // [m]

/// A wall from the clamped root along x, `width` across.
Model clamped_wall(double width, int cells_across)
{
  Model wall = plate_model(grid_mesh({.x = even_lines(0.0, length, 12),
                                      .y = even_lines(0.0, width, cells_across),
                                      .surface = flat(),
                                      .thickness = thickness}),
                           solid(isotropic(207e9, 0.3, 7850.0), thickness));
  wall.supports.push_back({.group = "x-", .support = EdgeSupport::clamped});
  return wall;
}

/// Two cells side by side, open at the free end: two walls across both, three webs between them.
Body double_cell_box()
{
  constexpr int per_cell = 6;
  Body box;
  for (const double z : {0.0, side})
  {
    BodyPart wall = {.name = "wall", .model = clamped_wall(2.0 * side, 2 * per_cell)};
    wall.placement.translation() = Eigen::Vector3d(0.0, 0.0, z);
    box.parts.push_back(wall);
  }
  for (const double y : {0.0, side, 2.0 * side})
  {
    BodyPart web = {.name = "web", .model = clamped_wall(side, per_cell)};
    web.placement.linear() = Eigen::AngleAxisd(0.5 * std::numbers::pi, Eigen::Vector3d::UnitX()).toRotationMatrix();
    web.placement.translation() = Eigen::Vector3d(0.0, y, 0.0);
    box.parts.push_back(web);
  }
  box.joints = nodes_at_one_place(box.parts);
  return box;
}

} // namespace

std::vector<CaseModel> folded_plates()
{
  return {{.name = "double-cell box", .compute = [](const ReferenceCase& reference) {
             return modal_values(assemble(double_cell_box()).system, reference);
           }}};
}

} // namespace plate::validation
