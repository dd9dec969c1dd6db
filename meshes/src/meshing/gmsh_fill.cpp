// SPDX-License-Identifier: MPL-2.0
#include "gmsh_fill.h"

#include <plate/core/error.h>

#include <gmsh.h>

#include <algorithm>
#include <mutex>
#include <string>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr double growth = 0.35; // of the edge length with the distance from the given edges
constexpr int surface = 1;

// Gmsh keeps its state in globals: one session at a time.
std::mutex session_mutex;

class Session
{
public:
  Session() : lock_(session_mutex)
  {
    gmsh::initialize(0, nullptr, false);
    gmsh::option::setNumber("General.Terminal", 0);
    gmsh::option::setNumber("General.NumThreads", 1);
    gmsh::option::setNumber("Mesh.Algorithm", 6); // the one that is reproducible and never inverts
    gmsh::option::setNumber("Mesh.MeshSizeExtendFromBoundary", 0);
    gmsh::option::setNumber("Mesh.MeshSizeFromPoints", 0);
    gmsh::model::add("plate");
  }
  ~Session() { gmsh::finalize(); }
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

private:
  std::lock_guard<std::mutex> lock_;
};

// Edge length at the nodes of the given polygons: the longer of the two edges that meet there.
struct SizeSource
{
  Vector2d position; // [m]
  double size;       // [m]
};

class SizeField
{
public:
  SizeField(const CornerMesh& mesh, const std::vector<std::vector<int>>& polygons, double size) : size_(size)
  {
    for (const std::vector<int>& polygon : polygons)
      for (std::size_t i = 0; i < polygon.size(); ++i)
      {
        const auto at = [&](std::size_t k)
        { return mesh.nodes[static_cast<std::size_t>(polygon[k % polygon.size()])]; };
        const Vector2d p = at(i);
        const double before = (p - at(i + polygon.size() - 1)).norm();
        const double after = (p - at(i + 1)).norm();
        sources_.push_back({p, std::max(before, after)});
      }
  }

  [[nodiscard]] double at(double x, double y) const
  {
    double size = size_;
    for (const SizeSource& s : sources_)
      if (s.size < size)
        size = std::min(size, s.size + growth * (Vector2d(x, y) - s.position).norm());
    return size;
  }

private:
  double size_; // [m]
  std::vector<SizeSource> sources_;
};

// Points, lines and loops of the polygons; point tags are node numbers plus one.
void add_polygons(const CornerMesh& mesh, const std::vector<std::vector<int>>& polygons)
{
  std::vector<int> loops;
  int line = 0;
  for (const std::vector<int>& polygon : polygons)
  {
    for (const int node : polygon)
    {
      const Vector2d& p = mesh.nodes[static_cast<std::size_t>(node)];
      gmsh::model::geo::addPoint(p.x(), p.y(), 0.0, 0.0, node + 1);
    }
    std::vector<int> lines;
    for (std::size_t i = 0; i < polygon.size(); ++i)
    {
      gmsh::model::geo::addLine(polygon[i] + 1, polygon[(i + 1) % polygon.size()] + 1, ++line);
      gmsh::model::geo::mesh::setTransfiniteCurve(line, 2);
      lines.push_back(line);
    }
    loops.push_back(gmsh::model::geo::addCurveLoop(lines));
  }
  gmsh::model::geo::addPlaneSurface(loops, surface);
}

// Nodes of the lines inside, each once.
std::vector<int> line_nodes(const CornerMesh& mesh)
{
  std::vector<int> nodes;
  for (const auto& line : mesh.lines)
    nodes.insert(nodes.end(), line.begin(), line.end());
  std::sort(nodes.begin(), nodes.end());
  nodes.erase(std::unique(nodes.begin(), nodes.end()), nodes.end());
  return nodes;
}

// Lines inside the surface that become edges of triangles.
void embed_lines(const CornerMesh& mesh)
{
  for (const int node : line_nodes(mesh))
  {
    const Vector2d& p = mesh.nodes[static_cast<std::size_t>(node)];
    gmsh::model::geo::addPoint(p.x(), p.y(), 0.0, 0.0, node + 1);
  }
  std::vector<int> lines;
  for (const auto& [from, to] : mesh.lines)
  {
    lines.push_back(gmsh::model::geo::addLine(from + 1, to + 1));
    gmsh::model::geo::mesh::setTransfiniteCurve(lines.back(), 2);
  }
  gmsh::model::geo::synchronize();
  if (!lines.empty())
    gmsh::model::mesh::embed(1, lines, 2, surface);
}

void collect(CornerMesh& mesh, const std::vector<std::vector<int>>& polygons)
{
  std::vector<std::size_t> tags;
  std::vector<double> xyz, parameters;
  std::map<std::size_t, int> numbers; // node tag of the mesher -> node of the mesh
  const auto find_node = [&](int node)
  {
    gmsh::model::mesh::getNodes(tags, xyz, parameters, 0, node + 1);
    numbers[tags.at(0)] = node;
  };
  for (const std::vector<int>& polygon : polygons)
    for (const int node : polygon)
      find_node(node);
  for (const int node : line_nodes(mesh))
    find_node(node);
  gmsh::model::mesh::getNodes(tags, xyz, parameters, 2, surface);
  for (std::size_t i = 0; i < tags.size(); ++i)
  {
    numbers[tags[i]] = static_cast<int>(mesh.nodes.size());
    mesh.nodes.emplace_back(xyz[3 * i], xyz[3 * i + 1]);
  }
  std::vector<std::size_t> elements, corners;
  constexpr int linear_triangle = 2;
  gmsh::model::mesh::getElementsByType(linear_triangle, elements, corners, surface);
  for (std::size_t e = 0; e < elements.size(); ++e)
  {
    std::array<int, 3> t{numbers.at(corners[3 * e]), numbers.at(corners[3 * e + 1]), numbers.at(corners[3 * e + 2])};
    const auto at = [&](std::size_t k) -> const Vector2d& { return mesh.nodes[static_cast<std::size_t>(t[k])]; };
    const Vector2d u = at(1) - at(0), v = at(2) - at(0);
    if (u.x() * v.y() < u.y() * v.x())
      std::swap(t[1], t[2]);
    mesh.triangles.push_back(t);
  }
}

} // namespace

void fill(CornerMesh& mesh, double size)
{
  std::vector<std::vector<int>> polygons = mesh.inner_loops;
  polygons.insert(polygons.end(), mesh.bar_loops.begin(), mesh.bar_loops.end());
  const SizeField field(mesh, polygons, size);
  const auto give_up = [](const std::string& reason)
  { throw NumericalFailure(message("mesher: no mesh for this plate (", reason, "); try another mesh size")); };
  const Session session;
  try
  {
    add_polygons(mesh, polygons);
    embed_lines(mesh);
    gmsh::model::mesh::setSizeCallback([&field](int, int, double x, double y, double) { return field.at(x, y); });
    gmsh::model::mesh::generate(2);
    collect(mesh, polygons);
  }
  catch (const std::string& reason) // Gmsh 4.8 throws its messages as bare strings
  {
    give_up(reason);
  }
  catch (const std::exception& error)
  {
    give_up(error.what());
  }
}

} // namespace plate
