// SPDX-License-Identifier: MPL-2.0
#include "boundary_stations.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr double strip_thicknesses = 1.2;           // twist decays over a fraction of the thickness at a free edge
constexpr double sharpest = std::numbers::pi / 3.0; // tips sharper than this have no strip [rad]
constexpr double most_reentrant = 5.0 * std::numbers::pi / 3.0; // [rad]
constexpr double reentrant = 7.0 * std::numbers::pi / 6.0; // corners of the plate above this angle cut into it [rad]
constexpr double taper = 0.5;                              // greatest change of the strip's width along the edge
constexpr double least_share = 0.2;                        // narrower strips are left out
constexpr double convex = 5.0 * std::numbers::pi / 6.0; // corners of the plate below this angle crowd the strips [rad]
constexpr double crowding = 0.7;                        // of the way to the bisector of such a corner

// Tangent before and after a node; both the same but at a corner.
struct Tangents
{
  Vector2d before, after;
};

Tangents tangents_at(const CurveLoop& loop, const BoundaryStation& station)
{
  const auto p = static_cast<std::size_t>(station.piece);
  const Vector2d after = evaluate(loop.pieces[p], station.t).tangent();
  if (station.t > 0.0 || !is_corner(loop, p))
    return {after, after};
  const std::size_t previous = (p + loop.pieces.size() - 1) % loop.pieces.size();
  return {evaluate(loop.pieces[previous], 1.0).tangent(), after};
}

// Direction into the plate that keeps the same distance from both edges at a corner; its length is that of the mitre.
Vector2d mitre(const Tangents& t)
{
  const auto left = [](const Vector2d& d) { return Vector2d(-d.y(), d.x()); };
  const Vector2d sum = left(t.before) + left(t.after);
  return 2.0 * sum / sum.squaredNorm();
}

// Near a convex corner the strips of its two sides meet on the bisector: their widths stay short of it.
void keep_off_bisectors(const CurveLoop& loop, const std::vector<BoundaryStation>& stations,
                        const std::vector<Vector2d>& positions, std::vector<double>& width)
{
  const auto lies_across_a_hole = [&](const Vector2d& corner, std::size_t i)
  {
    const Vector2d left = evaluate(loop.pieces[static_cast<std::size_t>(stations[i].piece)], stations[i].t).left();
    return left.dot(corner - positions[i]) < -0.3 * (corner - positions[i]).norm();
  };
  const std::size_t n = stations.size();
  for (std::size_t c = 0; c < n; ++c)
  {
    const auto piece = static_cast<std::size_t>(stations[c].piece);
    if (stations[c].t > 0.0 || !is_corner(loop, piece) || plate_angle(loop, piece) > convex)
      continue;
    const double slope = crowding * std::tan(0.5 * plate_angle(loop, piece));
    for (std::size_t i = 0; i < n; ++i)
      if (i != c && !lies_across_a_hole(positions[c], i))
        width[i] = std::min(width[i], slope * (positions[i] - positions[c]).norm());
    for (const std::size_t neighbour : {(c + 1) % n, (c + n - 1) % n})
      width[c] = std::min(width[c], slope * (positions[neighbour] - positions[c]).norm());
  }
}

// As the end of a rectangular slot: the field is singular at both ends of such a side.
bool between_reentrant_corners(const CurveLoop& loop, std::size_t piece)
{
  const auto cuts_in = [&loop](std::size_t p) { return is_corner(loop, p) && plate_angle(loop, p) > reentrant; };
  return cuts_in(piece) && cuts_in((piece + 1) % loop.pieces.size());
}

} // namespace

FullStripWidth::FullStripWidth(const PlateGeometry& geometry, const MeshOptions& options)
    : thickness_(geometry.outline, geometry.thickness), fixed_(options.strip_width)
{
}

double FullStripWidth::at(const Vector2d& point) const
{
  return fixed_ > 0.0 ? fixed_ : strip_thicknesses * thickness_.at(point);
}

std::vector<std::vector<BoundaryStation>> place_stations(const PlateBoundary& boundary,
                                                         const std::vector<BoundarySample>& samples)
{
  std::vector<std::vector<BoundaryStation>> stations(boundary.loops.size());
  std::size_t begin = 0;
  while (begin < samples.size())
  {
    const BoundarySample& first = samples[begin];
    std::size_t end = begin;
    double edges = 0.0; // wanted on this piece
    for (; end < samples.size() && samples[end].loop == first.loop && samples[end].piece == first.piece; ++end)
      edges += samples[end].step / samples[end].size;
    // A piece a tenth too long for its edges does not get another one.
    const int least = between_reentrant_corners(boundary.loops[first.loop], first.piece) ? 2 : 1;
    const int count = std::max(least, static_cast<int>(std::ceil(0.9 * edges)));
    double passed = 0.0;
    int next = 0;
    for (std::size_t i = begin; i < end; ++i)
    {
      const double share = samples[i].step / samples[i].size * count / edges; // of an edge, in this sample's interval
      for (; next < count && passed + share > next + 1e-9 * count; ++next)
      {
        const double within = (next - passed) / share;
        const double t = (static_cast<double>(i - begin) + within) / static_cast<double>(end - begin);
        stations[first.loop].push_back({static_cast<int>(first.piece), next == 0 ? 0.0 : t, 0.0});
      }
      passed += share;
    }
    begin = end;
  }
  return stations;
}

void set_strips(std::vector<std::vector<BoundaryStation>>& stations, const PlateBoundary& boundary,
                const EdgeDistance& edges, const FullStripWidth& full)
{
  for (std::size_t l = 0; l < stations.size(); ++l)
  {
    const CurveLoop& loop = boundary.loops[l];
    const std::size_t n = stations[l].size();
    std::vector<Vector2d> positions(n);
    std::vector<double> width(n); // [m]
    for (std::size_t i = 0; i < n; ++i)
    {
      const BoundaryStation& s = stations[l][i];
      const auto p = static_cast<std::size_t>(s.piece);
      const CurvePoint point = evaluate(loop.pieces[p], s.t);
      positions[i] = point.position;
      const Tangents tangents = tangents_at(loop, s);
      width[i] = std::min(full.at(point.position), edges.gap(point.position, mitre(tangents).normalized()) / 3.0);
      if (point.curvature() > 0.0)
        width[i] = std::min(width[i], 0.5 / point.curvature());
      if (s.t > 0.0 || !is_corner(loop, p))
        continue;
      const double angle = plate_angle(loop, p);
      const std::size_t previous = (p + loop.pieces.size() - 1) % loop.pieces.size();
      width[i] = std::min({width[i], 0.5 * length(loop.pieces[p]), 0.5 * length(loop.pieces[previous])});
      if (angle < sharpest || angle > most_reentrant)
        width[i] = 0.0;
    }
    keep_off_bisectors(loop, stations[l], positions, width);
    for (std::size_t i = 0; i < n; ++i)
      if (width[i] < least_share * full.at(positions[i]))
        width[i] = 0.0;
    // Twice round in both directions: the widths change gently along the loop.
    for (std::size_t k = 0; k < 2 * n; ++k)
    {
      const std::size_t a = k % n, b = (k + 1) % n;
      width[b] = std::min(width[b], width[a] + taper * (positions[b] - positions[a]).norm());
    }
    for (std::size_t k = 2 * n; k-- > 0;)
    {
      const std::size_t a = (k + 1) % n, b = k % n;
      width[b] = std::min(width[b], width[a] + taper * (positions[b] - positions[a]).norm());
    }
    for (std::size_t i = 0; i < n; ++i)
    {
      const double share = width[i] / full.at(positions[i]);
      stations[l][i].strip_share = share < least_share ? 0.0 : share;
    }
  }
}

std::vector<std::vector<BoundaryNode>> boundary_nodes(const std::vector<std::vector<BoundaryStation>>& stations,
                                                      const PlateBoundary& boundary, const FullStripWidth& full)
{
  std::vector<std::vector<BoundaryNode>> nodes(stations.size());
  for (std::size_t l = 0; l < stations.size(); ++l)
    for (const BoundaryStation& s : stations[l])
    {
      const Vector2d position = evaluate(boundary.loops[l].pieces[static_cast<std::size_t>(s.piece)], s.t).position;
      const double width = s.strip_share * full.at(position);
      const Vector2d offset =
          s.strip_share > 0.0 ? Vector2d(width * mitre(tangents_at(boundary.loops[l], s))) : Vector2d::Zero();
      nodes[l].push_back({position, offset});
    }
  return nodes;
}

} // namespace plate
