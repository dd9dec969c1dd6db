// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/body_mesh.h>

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr double same_outline = 5e-5; // distance between the outlines of top and back that passes as rounding [m]

/// The place on a loop nearest to a point; joints of pieces are the start of the second.
BoundaryStation nearest_station(const CurveLoop& loop, const Vector2d& point, double& distance)
{
  constexpr int samples = 64;
  BoundaryStation best = {.piece = 0, .t = 0.0, .strip_share = 0.0};
  distance = HUGE_VAL;
  for (std::size_t p = 0; p < loop.pieces.size(); ++p)
  {
    const auto away = [&](double t) { return (evaluate(loop.pieces[p], t).position - point).norm(); };
    double t = 0.0;
    for (int k = 1; k <= samples; ++k)
      if (const double s = static_cast<double>(k) / samples; away(s) < away(t))
        t = s;
    for (int step = 0; step < 20; ++step) // Newton on the derivative of the squared distance
    {
      const CurvePoint at = evaluate(loop.pieces[p], t);
      const Vector2d d = at.position - point;
      const double bend = at.first.squaredNorm() + d.dot(at.second);
      if (!(bend > 0.0))
        break;
      t = std::clamp(t - d.dot(at.first) / bend, 0.0, 1.0);
    }
    if (away(t) < distance)
    {
      distance = away(t);
      best.piece = static_cast<int>(p);
      best.t = t;
    }
  }
  constexpr double joint = 1e-7; // of the parameter
  if (best.t > 1.0 - joint)
    best = {.piece = (best.piece + 1) % static_cast<int>(loop.pieces.size()), .t = 0.0, .strip_share = 0.0};
  if (best.t < joint)
    best.t = 0.0;
  return best;
}

/// Stations of the top's outline as they lie on the back, seen from its own outside.
std::vector<BoundaryStation> facing_stations(const PlanformMesh& top, const CurveLoop& top_loop,
                                             const CurveLoop& back_loop)
{
  std::vector<BoundaryStation> stations;
  for (const BoundaryStation& s : top.stations.front())
  {
    const Vector2d at = evaluate(top_loop.pieces[static_cast<std::size_t>(s.piece)], s.t).position;
    double distance = 0.0;
    BoundaryStation facing = nearest_station(back_loop, {at.x(), -at.y()}, distance);
    if (distance > same_outline)
      throw InvalidInput(message("body: the outlines of top and back are ", distance * 1e3,
                                 " mm apart at x = ", at.x() * 1e3, ", y = ", at.y() * 1e3,
                                 " mm of the top; give both plates the same outline"));
    facing.strip_share = s.strip_share;
    stations.push_back(facing);
  }
  std::sort(stations.begin(), stations.end(),
            [](const BoundaryStation& a, const BoundaryStation& b)
            { return a.piece < b.piece || (a.piece == b.piece && a.t < b.t); });
  int next = 0; // joint of pieces expected
  for (const BoundaryStation& s : stations)
    if (s.t == 0.0 && s.piece == next)
      ++next;
  if (next != static_cast<int>(back_loop.pieces.size()))
    throw InvalidInput("body: the outline of the back is drawn in other pieces than that of the top; give both plates "
                       "the same outline");
  return stations;
}

} // namespace

BodyPlates mesh_body_plates(const PlateGeometry& top, const PlateGeometry& back, double overhang, double size)
{
  if (!(overhang > 0.0 && std::isfinite(overhang)))
    throw InvalidInput(message("body: the overhang of the plates must be positive; got ", overhang * 1e3, " mm"));
  const MeshOptions options = {.size = size, .strip_width = overhang};
  BodyPlates plates = {.top = mesh_planform(top, options), .back = {}};
  plates.back =
      mesh_planform(back, plates.top.options,
                    facing_stations(plates.top, boundary_of(top).loops.front(), boundary_of(back).loops.front()));
  return plates;
}

BodyPlates move_body_plates(const BodyPlates& plates, const PlateGeometry& top, const PlateGeometry& back,
                            double overhang)
{
  BodyPlates from = plates;
  from.top.options.strip_width = overhang;
  from.back.options.strip_width = overhang;
  from.back.stations.front() =
      facing_stations(plates.top, boundary_of(top).loops.front(), boundary_of(back).loops.front());
  return {.top = move_planform(from.top, top), .back = move_planform(from.back, back)};
}

std::vector<std::array<int, 4>> rib_line(const PlanformMesh& mesh)
{
  // Corner nodes are those on the boundary, then the strips' inner ones, both in the order of the stations.
  int inner = 0;
  for (const auto& loop : mesh.stations)
    inner += static_cast<int>(loop.size());
  std::vector<int> line;
  for (std::size_t i = 0; i < mesh.stations.front().size(); ++i)
    line.push_back(mesh.stations.front()[i].strip_share > 0.0 ? inner++ : static_cast<int>(i));
  std::map<std::pair<int, int>, std::array<int, 2>> edges;
  for (const auto& t : mesh.triangles)
    for (std::size_t k = 0; k < 3; ++k)
    {
      const std::size_t next = (k + 1) % 3;
      edges[{t[k], t[next]}] = {t[3 + 2 * k], t[4 + 2 * k]};
      edges[{t[next], t[k]}] = {t[4 + 2 * k], t[3 + 2 * k]};
    }
  std::vector<std::array<int, 4>> out;
  for (std::size_t i = 0; i < line.size(); ++i)
  {
    const int a = line[i];
    const int b = line[(i + 1) % line.size()];
    const auto between = edges.find({a, b});
    if (between == edges.end())
      throw NumericalFailure("body: the line of the ribs is no line of the mesh");
    out.push_back({a, between->second[0], between->second[1], b});
  }
  return out;
}

} // namespace plate
