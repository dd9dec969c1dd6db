// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <array>
#include <functional>
#include <vector>

namespace plate::test
{

/// An invented rectangular plate on a paraboloid, made without a mesh generator.
struct SamplePlate
{
  double length = 0.36;      ///< along x [m]
  double width = 0.21;       ///< along y [m]
  double rise = 0.0;         ///< z = rise (1 - (2x/length)²) (1 - (2y/width)²) [m]
  double thickness = 0.0028; ///< [m]
  int num_x = 12;            ///< cells along x
  int num_y = 7;             ///< cells along y
  std::array<int, 4> hole{}; ///< cells left out: first and one past the last in x, then in y
  std::array<int, 4> bar{};  ///< cells under a bar, likewise
};

/// Two cubic triangles for each cell; nodes nobody uses (inside the hole) are left out.
inline ShellMesh make_mesh(const SamplePlate& plate)
{
  ShellMesh mesh;
  const int row = 3 * plate.num_x + 1;
  std::vector<int> numbers(static_cast<std::size_t>(row * (3 * plate.num_y + 1)), -1);
  const auto node = [&](int i, int j)
  {
    int& number = numbers[static_cast<std::size_t>(j * row + i)];
    if (number < 0)
    {
      number = static_cast<int>(mesh.nodes.size());
      const double u = 2.0 * i / (3.0 * plate.num_x) - 1.0;
      const double v = 2.0 * j / (3.0 * plate.num_y) - 1.0;
      const double z = plate.rise * (1.0 - u * u) * (1.0 - v * v);
      const double dz_dx = -4.0 * plate.rise / plate.length * u * (1.0 - v * v);
      const double dz_dy = -4.0 * plate.rise / plate.width * v * (1.0 - u * u);
      mesh.nodes.emplace_back(0.5 * plate.length * u, 0.5 * plate.width * v, z);
      mesh.normals.push_back(Eigen::Vector3d(-dz_dx, -dz_dy, 1.0).normalized());
      mesh.thickness.push_back(plate.thickness);
    }
    return number;
  };
  using Corner = std::array<int, 2>;
  const auto add_triangle = [&](const Corner& a, const Corner& b, const Corner& c)
  {
    const auto between = [&](const Corner& p, const Corner& q, int thirds)
    { return node(p[0] + (q[0] - p[0]) * thirds / 3, p[1] + (q[1] - p[1]) * thirds / 3); };
    mesh.triangles.push_back({node(a[0], a[1]), node(b[0], b[1]), node(c[0], c[1]), between(a, b, 1), between(a, b, 2),
                              between(b, c, 1), between(b, c, 2), between(c, a, 1), between(c, a, 2),
                              node((a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3)});
  };
  const auto inside = [](const std::array<int, 4>& box, int i, int j)
  { return i >= box[0] && i < box[1] && j >= box[2] && j < box[3]; };
  BarFootprint bar;
  for (int j = 0; j < plate.num_y; ++j)
    for (int i = 0; i < plate.num_x; ++i)
    {
      if (inside(plate.hole, i, j))
        continue;
      if (inside(plate.bar, i, j))
        for (const int next : {0, 1})
          bar.triangles.push_back(static_cast<int>(mesh.triangles.size()) + next);
      add_triangle({3 * i, 3 * j}, {3 * i + 3, 3 * j}, {3 * i, 3 * j + 3});
      add_triangle({3 * i + 3, 3 * j}, {3 * i + 3, 3 * j + 3}, {3 * i, 3 * j + 3});
    }
  if (!bar.triangles.empty())
    mesh.bars.push_back(bar);
  return mesh;
}

/// A function of the plane at the nodes.
inline std::vector<double> at_nodes(const ShellMesh& mesh, const std::function<double(double, double)>& function)
{
  std::vector<double> values;
  for (const Eigen::Vector3d& node : mesh.nodes)
    values.push_back(function(node[0], node[1]));
  return values;
}

} // namespace plate::test
