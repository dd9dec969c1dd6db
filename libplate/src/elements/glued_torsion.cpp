// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/glued_torsion.h>

#include <plate/core/error.h>

#include <Eigen/SparseCholesky>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <vector>

namespace plate
{

namespace
{

// The section turns by y z0 - z y0 per length; the displacement along the bar is chi - y z. Shear strains are then
// chi,y - 2 z and chi,z, with chi = 0 in a thin strip about z = 0, and chi odd in y: half of the section is enough.

constexpr double growth = 2.0;      // of the elements' sizes away from a corner
constexpr double smallest = 0.02;   // element at a corner, per least side of bar and strip
constexpr double greatest = 0.4;    // element in the bar, per its least side
constexpr double strip_reach = 4.0; // strip beside the bar, per length in which disturbances fall off

/// Sizes of elements along a side [m].
struct Sizes
{
  double first; // at the corner
  double most;
};

/// Distances from a corner between which the elements lie, ascending from 0 to a length.
std::vector<double> graded(double length, const Sizes& sizes)
{
  std::vector<double> lines = {0.0};
  for (double size = sizes.first; lines.back() < length; size = std::min(growth * size, sizes.most))
    lines.push_back(lines.back() + size);
  const double shrink = length / lines.back();
  for (double& line : lines)
    line *= shrink;
  return lines;
}

/// One row of elements across the section.
struct Row
{
  double bottom; // [m]
  double top;    // [m]
  double G_y;    // [Pa]
  double G_z;    // [Pa]
  bool bar_only; // reaches as far as the bar
};

struct Grid
{
  std::vector<double> y;         // lines of half the section, from its middle [m]
  std::size_t num_under_bar = 0; // elements of a row within the bar's half width
  std::vector<Row> rows;         // from the bottom upward
};

/// Rows of a layer of the strip, cut where the graded lines pass through it.
void add_rows(const TorsionLayer& layer, double bottom, const std::vector<double>& lines, std::vector<Row>& rows)
{
  const double top = bottom + layer.thickness;
  double from = bottom;
  for (const double line : lines)
    if (line > from + 0.1 * layer.thickness && line < top - 0.1 * layer.thickness)
    {
      rows.push_back({.bottom = from, .top = line, .G_y = layer.G_across, .G_z = layer.G_normal, .bar_only = false});
      from = line;
    }
  rows.push_back({.bottom = from, .top = top, .G_y = layer.G_across, .G_z = layer.G_normal, .bar_only = false});
}

Grid make_grid(double width, const TorsionLayer& bar, std::span<const TorsionLayer> strip)
{
  double thickness = 0.0;
  double stiffest = 0.0;
  double softest = std::numeric_limits<double>::infinity();
  for (const TorsionLayer& layer : strip)
  {
    thickness += layer.thickness;
    stiffest = std::max(stiffest, layer.G_across);
    softest = std::min(softest, layer.G_normal);
  }
  const double side = std::min({0.5 * width, bar.thickness, strip.empty() ? width : thickness});
  const Sizes sizes = {.first = smallest * side, .most = greatest * std::min(0.5 * width, bar.thickness)};
  Grid grid;
  for (const double distance : graded(0.5 * width, sizes))
    grid.y.insert(grid.y.begin(), 0.5 * width - distance);
  grid.num_under_bar = grid.y.size() - 1;
  if (!strip.empty())
  {
    const double reach = strip_reach * thickness * std::sqrt(std::max(1.0, stiffest / softest));
    const std::vector<double> beside = graded(reach, {.first = sizes.first, .most = reach});
    for (std::size_t i = 1; i < beside.size(); ++i)
      grid.y.push_back(0.5 * width + beside[i]);
  }
  const std::vector<double> below = graded(bar.thickness, sizes);
  for (std::size_t i = below.size() - 1; i > 0; --i)
    grid.rows.push_back(
        {.bottom = -below[i], .top = -below[i - 1], .G_y = bar.G_across, .G_z = bar.G_normal, .bar_only = true});
  double bottom = 0.0;
  for (const TorsionLayer& layer : strip)
  {
    add_rows(layer, bottom, graded(thickness, {.first = sizes.first, .most = thickness}), grid.rows);
    bottom += layer.thickness;
  }
  return grid;
}

/// Matrices of a quadratic line element of unit length: of slopes and of values.
const Eigen::Matrix3d& slope_products()
{
  static const Eigen::Matrix3d K = (Eigen::Matrix3d() << 7, -8, 1, -8, 16, -8, 1, -8, 7).finished() / 3.0;
  return K;
}

const Eigen::Matrix3d& value_products()
{
  static const Eigen::Matrix3d M = (Eigen::Matrix3d() << 4, 2, -1, 2, 16, 2, -1, 2, 4).finished() / 30.0;
  return M;
}

/// Torsional stiffness of the grid, with or without the rows of the bar alone.
double stiffness(const Grid& grid, bool with_bar)
{
  const auto lines_y = static_cast<int>(2 * grid.y.size() - 1);
  const auto lines_z = static_cast<int>(2 * grid.rows.size() + 1);
  std::vector<int> unknown(static_cast<std::size_t>(lines_y * lines_z), -1);
  int num_unknowns = 0;
  std::vector<Eigen::Triplet<double>> entries;
  std::vector<double> load;
  double held = 0.0; // stiffness without warping beyond - y z
  for (std::size_t r = 0; r < grid.rows.size(); ++r)
  {
    const Row& row = grid.rows[r];
    if (row.bar_only && !with_bar)
      continue;
    const double h = row.top - row.bottom;
    const double middle = 0.5 * (row.top + row.bottom);
    const Eigen::Vector3d moment = h * Eigen::Vector3d(row.bottom, 4.0 * middle, row.top) / 6.0; // of N z, by Simpson
    const std::size_t num = row.bar_only ? grid.num_under_bar : grid.y.size() - 1;
    for (std::size_t e = 0; e < num; ++e)
    {
      const double b = grid.y[e + 1] - grid.y[e];
      held += 4.0 * row.G_y * b * (std::pow(row.top, 3) - std::pow(row.bottom, 3)) / 3.0;
      std::array<int, 9> index;
      for (int j = 0; j < 3; ++j)
        for (int i = 0; i < 3; ++i)
        {
          const int line = static_cast<int>(2 * e) + i;
          int& u = unknown[static_cast<std::size_t>((static_cast<int>(2 * r) + j) * lines_y + line)];
          if (u < 0 && line > 0) // zero in the middle
          {
            u = num_unknowns++;
            load.push_back(0.0);
          }
          index[static_cast<std::size_t>(3 * j + i)] = u;
        }
      constexpr double slope_integral[3] = {-1.0, 0.0, 1.0};
      for (int p = 0; p < 9; ++p)
      {
        const int u = index[static_cast<std::size_t>(p)];
        if (u < 0)
          continue;
        load[static_cast<std::size_t>(u)] += 2.0 * row.G_y * slope_integral[p % 3] * moment(p / 3);
        for (int q = 0; q < 9; ++q)
          if (const int v = index[static_cast<std::size_t>(q)]; v >= 0 && v <= u)
            entries.emplace_back(u, v,
                                 row.G_y * h / b * slope_products()(p % 3, q % 3) * value_products()(p / 3, q / 3) +
                                     row.G_z * b / h * value_products()(p % 3, q % 3) * slope_products()(p / 3, q / 3));
      }
    }
  }
  Eigen::SparseMatrix<double> K(num_unknowns, num_unknowns);
  K.setFromTriplets(entries.begin(), entries.end());
  const Eigen::Map<const Eigen::VectorXd> f(load.data(), num_unknowns);
  const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor(K);
  const double relief = f.dot(factor.solve(f));
  return 2.0 * (held - relief); // both halves
}

} // namespace

double glued_torsional_stiffness(double width, const TorsionLayer& bar, std::span<const TorsionLayer> strip)
{
  const auto possible = [](const TorsionLayer& layer)
  { return layer.thickness > 0.0 && layer.G_across > 0.0 && layer.G_normal > 0.0; };
  if (!(width > 0.0) || !possible(bar) || !std::all_of(strip.begin(), strip.end(), possible))
    throw InvalidInput(
        message("glued_torsional_stiffness: width, heights and shear moduli must be positive; got width ", width,
                " m, height ", bar.thickness, " m, moduli ", bar.G_across, " and ", bar.G_normal, " Pa"));
  const Grid grid = make_grid(width, bar, strip);
  const double whole = stiffness(grid, true);
  return strip.empty() ? whole : whole - stiffness(grid, false);
}

} // namespace plate
