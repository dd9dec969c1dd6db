// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "sample_models.h"

#include <plate/validation/sample_cavities.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace plate::test
{

// Cavities of the validation cases serve other tests too.
using validation::cavity_over;
using validation::plain_air;

/// Box of 350 x 200 x 35 mm.
inline CavityMesh box(int cells_x, int cells_y)
{
  return cavity_over(rectangle(0.35, 0.2, cells_x, cells_y, 1e-3), [](double, double) { return 0.035; });
}

/// The same plate, higher by z [m].
inline ShellMesh lifted(ShellMesh mesh, double z)
{
  for (Eigen::Vector3d& node : mesh.nodes)
    node.z() += z;
  return mesh;
}

/// Outline of a round hole, its first point at an angle [rad] from x.
inline std::vector<Eigen::Vector2d> circle(double radius, const Eigen::Vector2d& centre, double turned = 0.0)
{
  std::vector<Eigen::Vector2d> points;
  for (int i = 0; i < 180; ++i)
  {
    const double angle = turned + 2.0 * std::numbers::pi * i / 180.0;
    points.push_back(centre + radius * Eigen::Vector2d(std::cos(angle), std::sin(angle)));
  }
  return points;
}

} // namespace plate::test
