// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "sample_models.h"

#include <plate/air/cavity_mesh.h>
#include <plate/materials/air.h>

#include <functional>

namespace plate::test
{

inline constexpr Air plain_air = {.density = 1.204, .sound_speed = 343.2};

/// Over a rectangle about the origin, between z = 0 and a height [m].
inline CavityMesh cavity_over(ShellMesh planform, const std::function<double(double x, double y)>& height)
{
  const auto n = static_cast<Eigen::Index>(planform.nodes.size());
  CavityMesh mesh = {.planform = std::move(planform), .back = Eigen::VectorXd::Zero(n), .top = Eigen::VectorXd(n)};
  for (Eigen::Index i = 0; i < n; ++i)
  {
    const Eigen::Vector3d& at = mesh.planform.nodes[static_cast<std::size_t>(i)];
    mesh.top(i) = height(at.x(), at.y());
  }
  return mesh;
}

/// Box of 350 x 200 x 35 mm.
inline CavityMesh box(int cells_x, int cells_y)
{
  return cavity_over(rectangle(0.35, 0.2, cells_x, cells_y, 1e-3), [](double, double) { return 0.035; });
}

} // namespace plate::test
