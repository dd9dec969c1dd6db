// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "sample_models.h"

#include <plate/assembly/body.h>

#include <Eigen/Geometry>

#include <functional>
#include <numbers>
#include <utility>
#include <vector>

namespace plate::test
{

/// A flat wall about its middle, x over `length` and y over `width`.
[[nodiscard]] inline Model flat_wall(
    double length, double width, const Laminate& laminate, int cells_x, int cells_y,
    std::function<bool(double, double)> keep = [](double, double) { return true; })
{
  return plate_model(grid_mesh({.x = even_lines(-0.5 * length, 0.5 * length, cells_x),
                                .y = even_lines(-0.5 * width, 0.5 * width, cells_y),
                                .surface = flat(),
                                .thickness = total_thickness(laminate),
                                .keep = std::move(keep)}),
                     laminate);
}

[[nodiscard]] inline Eigen::Isometry3d placed_at(const Eigen::Vector3d& origin, double angle = 0.0,
                                                 const Eigen::Vector3d& axis = Eigen::Vector3d::UnitX())
{
  Eigen::Isometry3d placement = Eigen::Isometry3d::Identity();
  placement.linear() = Eigen::AngleAxisd(angle, axis).toRotationMatrix();
  placement.translation() = origin;
  return placement;
}

[[nodiscard]] inline Body glued(std::vector<BodyPart> parts)
{
  Body body = {.parts = std::move(parts), .joints = {}};
  body.joints = nodes_at_one_place(body.parts);
  return body;
}

/// Sides of a box and cells along them.
struct Box
{
  Eigen::Vector3d sides; ///< along x, y and z [m]
  std::array<int, 3> cells;
  Laminate laminate;
  std::function<bool(double, double)> keep = [](double, double) { return true; }; ///< of the top
};

/// A closed box: "top" at z = 0 and "back" below, both with outward normals, x, y from its middle; then the ends x- and
/// x+ and the sides y- and y+.
[[nodiscard]] inline Body closed_box(const Box& box)
{
  using Eigen::Vector3d;
  const auto [l, w, h] = std::array{box.sides.x(), box.sides.y(), box.sides.z()};
  const auto [nx, ny, nz] = box.cells;
  constexpr double pi = std::numbers::pi;
  const Model end = flat_wall(h, w, box.laminate, nz, ny);
  const Model side = flat_wall(l, h, box.laminate, nx, nz);
  return glued(
      {{.name = "top", .model = flat_wall(l, w, box.laminate, nx, ny, box.keep)},
       {.name = "back", .model = flat_wall(l, w, box.laminate, nx, ny), .placement = placed_at({0, 0, -h}, pi)},
       {.name = "x-", .model = end, .placement = placed_at({-0.5 * l, 0, -0.5 * h}, -0.5 * pi, Vector3d::UnitY())},
       {.name = "x+", .model = end, .placement = placed_at({0.5 * l, 0, -0.5 * h}, 0.5 * pi, Vector3d::UnitY())},
       {.name = "y-", .model = side, .placement = placed_at({0, -0.5 * w, -0.5 * h}, 0.5 * pi)},
       {.name = "y+", .model = side, .placement = placed_at({0, 0.5 * w, -0.5 * h}, -0.5 * pi)}});
}

/// A post between the same places of two parts.
[[nodiscard]] inline Strut post(std::size_t first, const PlanformRegion& foot, std::size_t second,
                                const PlanformRegion& opposite)
{
  return {.feet = {StrutFoot{.part = first, .region = foot}, StrutFoot{.part = second, .region = opposite}},
          .E = 12e9,
          .G = 0.7e9,
          .density = 400.0,
          .diameter = 6e-3};
}

} // namespace plate::test
