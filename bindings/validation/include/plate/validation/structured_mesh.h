// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <functional>
#include <vector>

namespace plate::validation
{

/// A surface over the plane: position and unit normal at planform coordinates.
struct Surface
{
  std::function<Eigen::Vector3d(double x, double y)> position; ///< [m]
  std::function<Eigen::Vector3d(double x, double y)> normal;
};

/// The plane z = 0.
[[nodiscard]] Surface flat();

/// z = H (1 - (2x/L)^2)(1 - (2y/W)^2) [m].
[[nodiscard]] Surface biparabolic(double length, double width, double height);

/// Rectangular cells between grid lines, each cut into two cubic triangles; cells for which `keep` is false are left
/// out.
struct GridPlate
{
  std::vector<double> x; ///< ascending [m]
  std::vector<double> y; ///< ascending [m]
  Surface surface;
  double thickness;                                                                   ///< [m]
  std::function<bool(double x, double y)> keep = [](double, double) { return true; }; ///< by cell centre
  std::function<bool(double x, double y)> under_bar = nullptr;                        ///< by cell centre; bar along x
};

/// Mesh with boundary groups "x-", "x+", "y-", "y+" for the outer sides and "hole" for the rest.
[[nodiscard]] ShellMesh grid_mesh(const GridPlate& plate);

/// Grid lines of equal cells.
[[nodiscard]] std::vector<double> even_lines(double from, double to, int cells);

/// Grid lines over [-half, half]: `cells` equal cells and one narrow strip at each end.
[[nodiscard]] std::vector<double> lines_with_strips(double half, int cells, double strip);

} // namespace plate::validation
