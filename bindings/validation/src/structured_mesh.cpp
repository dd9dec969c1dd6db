// SPDX-License-Identifier: MPL-2.0
#include <plate/validation/structured_mesh.h>

#include <Eigen/Geometry>

#include <cmath>
#include <map>
#include <utility>

namespace plate::validation
{

namespace
{

/// Builds nodes on demand from planform keys on a grid of thirds.
class GridBuilder
{
public:
  explicit GridBuilder(const GridPlate& plate) : plate_(plate) {}

  int node(int i, int j)
  {
    const auto [it, is_new] = index_.try_emplace({i, j}, static_cast<int>(mesh.nodes.size()));
    if (is_new)
    {
      const double x = line(plate_.x, i);
      const double y = line(plate_.y, j);
      mesh.nodes.push_back(plate_.surface.position(x, y));
      mesh.normals.push_back(plate_.surface.normal(x, y));
      mesh.thickness.push_back(plate_.thickness);
      station.push_back(x);
    }
    return it->second;
  }

  void add_cell(int i, int j)
  {
    const int a = 3 * i;
    const int b = 3 * j;
    add_triangle({a, b}, {a + 3, b}, {a + 3, b + 3});
    add_triangle({a, b}, {a + 3, b + 3}, {a, b + 3});
  }

  ShellMesh mesh;
  std::vector<double> station;

private:
  using Key = std::pair<int, int>;

  static double line(const std::vector<double>& lines, int third)
  {
    const auto cell = static_cast<std::size_t>(third / 3);
    const double t = (third % 3) / 3.0;
    return t == 0.0 ? lines[cell] : lines[cell] + t * (lines[cell + 1] - lines[cell]);
  }

  int between(Key p, Key q, int step)
  {
    return node(p.first + (q.first - p.first) / 3 * step, p.second + (q.second - p.second) / 3 * step);
  }

  void add_triangle(Key p, Key q, Key r)
  {
    mesh.triangles.push_back({node(p.first, p.second), node(q.first, q.second), node(r.first, r.second),
                              between(p, q, 1), between(p, q, 2), between(q, r, 1), between(q, r, 2), between(r, p, 1),
                              between(r, p, 2),
                              node((p.first + q.first + r.first) / 3, (p.second + q.second + r.second) / 3)});
  }

  const GridPlate& plate_;
  std::map<Key, int> index_;
};

EdgeGroup& group(ShellMesh& mesh, const std::string& name)
{
  for (EdgeGroup& g : mesh.boundary)
    if (g.name == name)
      return g;
  return mesh.boundary.emplace_back(EdgeGroup{name, {}});
}

} // namespace

Surface flat()
{
  return {.position = [](double x, double y) { return Eigen::Vector3d(x, y, 0.0); },
          .normal = [](double, double) { return Eigen::Vector3d(0.0, 0.0, 1.0); }};
}

Surface biparabolic(double length, double width, double height)
{
  const auto u = [length](double x) { return 1.0 - std::pow(2.0 * x / length, 2); };
  const auto v = [width](double y) { return 1.0 - std::pow(2.0 * y / width, 2); };
  return {.position = [=](double x, double y) { return Eigen::Vector3d(x, y, height * u(x) * v(y)); },
          .normal =
              [=](double x, double y)
          {
            const double zx = -8.0 * x / (length * length) * height * v(y);
            const double zy = -8.0 * y / (width * width) * height * u(x);
            return Eigen::Vector3d(-zx, -zy, 1.0).normalized();
          }};
}

ShellMesh grid_mesh(const GridPlate& plate)
{
  GridBuilder builder(plate);
  const int nx = static_cast<int>(plate.x.size()) - 1;
  const int ny = static_cast<int>(plate.y.size()) - 1;
  const auto centre = [](const std::vector<double>& lines, int i)
  { return 0.5 * (lines[static_cast<std::size_t>(i)] + lines[static_cast<std::size_t>(i) + 1]); };
  const auto kept = [&](int i, int j)
  { return i >= 0 && j >= 0 && i < nx && j < ny && plate.keep(centre(plate.x, i), centre(plate.y, j)); };

  BarFootprint footprint;
  for (int i = 0; i < nx; ++i)
    for (int j = 0; j < ny; ++j)
    {
      if (!kept(i, j))
        continue;
      if (plate.under_bar && plate.under_bar(centre(plate.x, i), centre(plate.y, j)))
      {
        const int first = static_cast<int>(builder.mesh.triangles.size());
        footprint.triangles.insert(footprint.triangles.end(), {first, first + 1});
      }
      builder.add_cell(i, j);
      const int a = 3 * i;
      const int b = 3 * j;
      const auto edge = [&](bool inside, const char* side, bool outer, std::array<int, 4> nodes)
      {
        if (!inside)
          group(builder.mesh, outer ? side : "hole").edges.push_back(nodes);
      };
      edge(kept(i, j - 1), "y-", j == 0,
           {builder.node(a, b), builder.node(a + 1, b), builder.node(a + 2, b), builder.node(a + 3, b)});
      edge(
          kept(i + 1, j), "x+", i == nx - 1,
          {builder.node(a + 3, b), builder.node(a + 3, b + 1), builder.node(a + 3, b + 2), builder.node(a + 3, b + 3)});
      edge(
          kept(i, j + 1), "y+", j == ny - 1,
          {builder.node(a + 3, b + 3), builder.node(a + 2, b + 3), builder.node(a + 1, b + 3), builder.node(a, b + 3)});
      edge(kept(i - 1, j), "x-", i == 0,
           {builder.node(a, b + 3), builder.node(a, b + 2), builder.node(a, b + 1), builder.node(a, b)});
    }
  ShellMesh mesh = std::move(builder.mesh);
  if (plate.under_bar)
  {
    footprint.station = std::move(builder.station);
    mesh.bars.push_back(std::move(footprint));
  }
  return mesh;
}

std::vector<double> even_lines(double from, double to, int cells)
{
  std::vector<double> lines;
  for (int i = 0; i <= cells; ++i)
    lines.push_back(from + (to - from) * i / cells);
  return lines;
}

std::vector<double> lines_with_strips(double half, int cells, double strip)
{
  std::vector<double> lines = {-half};
  const double inner = half - strip;
  for (int i = 0; i <= cells; ++i)
    lines.push_back(-inner + 2.0 * inner * i / cells);
  lines.push_back(half);
  return lines;
}

} // namespace plate::validation
