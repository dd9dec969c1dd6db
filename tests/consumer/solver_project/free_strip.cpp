// SPDX-License-Identifier: MPL-2.0
// A program outside libplate: a strip of cross-ply laminate, free all round, meshed by hand. Its bending modes have a
// closed form because no ply contracts sideways (nu12 = 0), so the strip bends as a beam does.
// Exit status 0 if the six rigid modes and the first three bending modes come out right.
#include <plate/assembly/assemble.h>
#include <plate/solvers/modal.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <iostream>
#include <numbers>

namespace
{

constexpr double length = 0.300;       // [m]
constexpr double width = 0.010;        // [m]
constexpr double ply_thickness = 1e-4; // [m]
constexpr int cells_along = 24;

plate::Material unidirectional()
{
  return {.name = "invented unidirectional ply",
          .elastic = {.E1 = 120e9, .E2 = 9e9, .E3 = 9e9, .G12 = 4.5e9, .G13 = 4.5e9, .G23 = 3e9, .nu12 = 0.0, .nu13 = 0.0, .nu23 = 0.0},
          .density = 1550.0};
}

plate::Laminate cross_ply()
{
  plate::Laminate laminate;
  for (const double degrees : {0.0, 90.0, 90.0, 0.0})
    laminate.plies.push_back({.material = unidirectional(), .thickness = ply_thickness, .angle = plate::Angle::degrees(degrees)});
  return laminate;
}

// One row of rectangles, each cut into two triangles; nodes on a lattice of thirds, three steps to a rectangle.
plate::ShellMesh strip(double thickness)
{
  const int rows = 4;
  const auto node = [&](int i, int j) { return i * rows + j; };
  plate::ShellMesh mesh;
  for (int i = 0; i <= 3 * cells_along; ++i)
    for (int j = 0; j < rows; ++j)
      mesh.nodes.emplace_back(length * (i / (3.0 * cells_along) - 0.5), width * (j / 3.0 - 0.5), 0.0);
  mesh.normals.assign(mesh.nodes.size(), Eigen::Vector3d::UnitZ());
  mesh.thickness.assign(mesh.nodes.size(), thickness);

  plate::EdgeGroup outline{.name = "outline", .edges = {}};
  for (int i = 0; i < 3 * cells_along; i += 3)
  {
    mesh.triangles.push_back({node(i, 0), node(i + 3, 0), node(i + 3, 3), node(i + 1, 0), node(i + 2, 0), node(i + 3, 1),
                              node(i + 3, 2), node(i + 2, 2), node(i + 1, 1), node(i + 2, 1)});
    mesh.triangles.push_back({node(i, 0), node(i + 3, 3), node(i, 3), node(i + 1, 1), node(i + 2, 2), node(i + 2, 3),
                              node(i + 1, 3), node(i, 2), node(i, 1), node(i + 1, 2)});
    outline.edges.push_back({node(i, 0), node(i + 1, 0), node(i + 2, 0), node(i + 3, 0)});
    outline.edges.push_back({node(i + 3, 3), node(i + 2, 3), node(i + 1, 3), node(i, 3)});
  }
  const int end = 3 * cells_along;
  outline.edges.push_back({node(end, 0), node(end, 1), node(end, 2), node(end, 3)});
  outline.edges.push_back({node(0, 3), node(0, 2), node(0, 1), node(0, 0)});
  mesh.boundary.push_back(outline);
  return mesh;
}

// Classical lamination theory for this stack, outer plies along, inner ones across [N m].
double bending_stiffness()
{
  const double inner = ply_thickness, outer = 2.0 * ply_thickness; // distances from the middle
  const plate::OrthotropicElastic ply = unidirectional().elastic;
  return 2.0 / 3.0 * (ply.E2 * std::pow(inner, 3) + ply.E1 * (std::pow(outer, 3) - std::pow(inner, 3)));
}

} // namespace

int main()
{
  const plate::Laminate laminate = cross_ply();
  const plate::Model model{.mesh = strip(plate::total_thickness(laminate)), .material = {.laminate = laminate}, .bars = {}, .supports = {}};
  const plate::ModalResult result = plate::solve_modes(plate::assemble(model), {.num_modes = 3});

  // Free-free beam: roots of cos x cosh x = 1, f = x^2 / (2 pi L^2) sqrt(D / m).
  // [Blevins1979] table 8-1, case 1. Shear lowers the third by 0.03 %, which sets the tolerance.
  constexpr std::array<double, 3> roots{4.73004074, 7.85320462, 10.9956078};
  constexpr double tolerance = 5e-4;
  const double factor = std::sqrt(bending_stiffness() / plate::areal_mass(laminate)) / (2.0 * std::numbers::pi * length * length);
  bool good = result.rigid_frequencies_hz.size() == 6 && result.rigid_frequencies_hz.maxCoeff() < 0.05;
  std::cout << "rigid modes: " << result.rigid_frequencies_hz.size() << '\n';
  for (std::size_t i = 0; i < roots.size(); ++i)
  {
    const double expected = factor * roots[i] * roots[i];
    const double computed = result.frequencies_hz[static_cast<Eigen::Index>(i)];
    const double difference = computed / expected - 1.0;
    std::cout << "bending mode " << i + 1 << ": " << computed << " Hz, closed form " << expected << " Hz, difference " << difference << '\n';
    good = good && std::abs(difference) < tolerance;
  }
  return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
