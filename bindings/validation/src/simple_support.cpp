// SPDX-License-Identifier: MPL-2.0
#include "simple_support.h"

#include <cmath>

namespace plate::validation
{
namespace
{

// Unknowns of a node of a flat plate with its reference axis along x.
constexpr std::size_t along_x = 0;
constexpr std::size_t along_y = 1;
constexpr std::size_t along_z = 2;
constexpr std::size_t about_x = 3;
constexpr std::size_t about_y = 4;

bool is_at(double value, double half)
{
  return std::abs(std::abs(value) - half) < 1e-9 * half;
}

} // namespace

HoldRule simply_supported(double length, double width, NavierEdge edge)
{
  return [=](std::size_t, const Eigen::Vector3d& at)
  {
    Hold hold;
    if (is_at(at.x(), 0.5 * length))
      hold.held[edge == NavierEdge::tangential ? along_y : along_x] = hold.held[along_z] = hold.held[about_x] = true;
    if (is_at(at.y(), 0.5 * width))
      hold.held[edge == NavierEdge::tangential ? along_x : along_y] = hold.held[along_z] = hold.held[about_y] = true;
    return hold;
  };
}

HoldRule bending_only(double length, double width)
{
  return [rule = simply_supported(length, width, NavierEdge::tangential)](std::size_t node, const Eigen::Vector3d& at)
  {
    Hold hold = rule(node, at);
    hold.held[along_x] = hold.held[along_y] = true;
    return hold;
  };
}

ShellMesh even_rectangle(double length, double width, int cells_x, int cells_y, double thickness)
{
  return grid_mesh({.x = even_lines(-0.5 * length, 0.5 * length, cells_x),
                    .y = even_lines(-0.5 * width, 0.5 * width, cells_y),
                    .surface = flat(),
                    .thickness = thickness});
}

} // namespace plate::validation
