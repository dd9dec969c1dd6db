// SPDX-License-Identifier: MPL-2.0
#include <plate/validation/sphere_mesh.h>

#include <array>
#include <map>

namespace plate::validation
{

ShellMesh sphere(double radius, double thickness, int n)
{
  ShellMesh mesh;
  std::map<std::array<int, 3>, int> index;
  const int thirds = 3 * n;
  const auto node = [&](std::array<int, 3> key) // integer coordinates on the octahedron |x| + |y| + |z| = 3n
  {
    const auto [it, is_new] = index.try_emplace(key, static_cast<int>(mesh.nodes.size()));
    if (is_new)
    {
      const Eigen::Vector3d normal = Eigen::Vector3d(key[0], key[1], key[2]).normalized();
      mesh.nodes.push_back(radius * normal);
      mesh.normals.push_back(normal);
      mesh.thickness.push_back(thickness);
    }
    return it->second;
  };
  for (const int sx : {-1, 1})
    for (const int sy : {-1, 1})
      for (const int sz : {-1, 1})
      {
        const bool mirrored = sx * sy * sz < 0; // keeps the corners counter-clockwise seen from outside
        const auto triangle = [&](int a, int b, int step)
        {
          const auto at = [&](int i, int j) // i, j thirds along the two sides of the triangle
          {
            const int u = a + step * (mirrored ? j : i);
            const int v = b + step * (mirrored ? i : j);
            return node({sx * (thirds - u - v), sy * u, sz * v});
          };
          mesh.triangles.push_back(
              {at(0, 0), at(3, 0), at(0, 3), at(1, 0), at(2, 0), at(2, 1), at(1, 2), at(0, 2), at(0, 1), at(1, 1)});
        };
        for (int i = 0; i < n; ++i)
          for (int j = 0; i + j < n; ++j)
          {
            triangle(3 * i, 3 * j, 1);
            if (i + j + 1 < n)
              triangle(3 * (i + 1), 3 * (j + 1), -1);
          }
      }
  return mesh;
}

} // namespace plate::validation
