// SPDX-License-Identifier: MPL-2.0
// A closed sphere: no edge, every slope, poles where the reference axis is the normal.
#include "sample_models.h"

#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <map>

using namespace plate;

namespace
{

/// The eight faces of an octahedron cut n by n and blown up.
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

} // namespace

TEST_CASE("a closed steel sphere has six rigid motions and the bending modes of thin-shell theory")
{
  // Benchmark of [Hayek1966]: R 2.5 m, h 0.1 m, E 200 GPa, nu 0.3, 7800 kg/m3; thin-shell theory with bending,
  // recomputed for this project: 237.246 (n = 2, five-fold), 282.854 (n = 3, seven-fold), 305.239 Hz (n = 4,
  // nine-fold). Thin-shell theory leaves out what is of the order of (h/R)^2 n^2: 0.2 % here.
  const double h = 0.1;
  const Model model = test::plate_model(sphere(2.5, h, 6), test::solid(test::isotropic(200e9, 0.3, 7800.0), h));
  const System system = assemble(model);
  const ModalResult modes = solve_modes(system, {.num_modes = 21});
  REQUIRE(modes.rigid_frequencies_hz.size() == 6);
  CHECK(modes.rigid_frequencies_hz(5) < 0.05);
  for (int i = 0; i < 21; ++i)
  {
    const double expected = i < 5 ? 237.246 : i < 12 ? 282.854 : 305.239;
    CHECK(modes.frequencies_hz(i) == doctest::Approx(expected).epsilon(2e-3));
  }
  MESSAGE("sphere: ", system.K.rows(), " unknowns, ", modes.frequencies_hz(0), " ... ", modes.frequencies_hz(4), ", ",
          modes.frequencies_hz(5), " ... ", modes.frequencies_hz(11), ", ", modes.frequencies_hz(12), " ... ",
          modes.frequencies_hz(20), " Hz");
}
