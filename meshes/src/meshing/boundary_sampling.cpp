// SPDX-License-Identifier: MPL-2.0
#include "boundary_sampling.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr double greatest_turn = 50.0 * std::numbers::pi / 180.0; // of one cubic edge: 1e-5 of its length off the curve
constexpr double growth = 0.4;    // of the edge length over the distance: neighbours differ by 1.5 at most
constexpr double gap_edges = 1.5; // edge length over the gap to the next edge
constexpr int samples_per_piece = 48;

// Halves the edge length at all samples that some place reaches.
void halve_near(const std::vector<FinerPlace>& places, std::vector<BoundarySample>& samples)
{
  std::vector<bool> near(samples.size(), false);
  for (const FinerPlace& place : places)
  {
    const auto distance = [&](const BoundarySample& s) { return (s.position - place.position).norm(); };
    double least = HUGE_VAL;
    for (const BoundarySample& s : samples)
      least = std::min(least, distance(s));
    for (std::size_t i = 0; i < samples.size(); ++i)
      near[i] = near[i] || distance(samples[i]) <= least + place.reach;
  }
  for (std::size_t i = 0; i < samples.size(); ++i)
    if (near[i])
      samples[i].size *= 0.5;
}

} // namespace

EdgeDistance::EdgeDistance(const PlateGeometry& geometry, const PlateBoundary& boundary)
{
  const auto add = [this](const std::vector<Vector2d>& points)
  {
    for (std::size_t i = 0; i < points.size(); ++i)
      segments_.push_back({points[i], points[(i + 1) % points.size()]});
  };
  for (const CurveLoop& loop : boundary.loops)
    add(sample(loop, samples_per_piece));
  if (geometry.bar)
  {
    const auto corners = bar_corners(*geometry.bar);
    add({corners.rbegin(), corners.rend()}); // the plate to the left, as for the holes
  }
}

double EdgeDistance::along(const Vector2d& from, const Vector2d& direction) const
{
  constexpr double itself = 1e-6; // the ray starts on the boundary [m]
  double least = HUGE_VAL;
  for (const Segment& s : segments_)
  {
    const Vector2d e = s.b - s.a;
    const Vector2d d = s.a - from;
    const double det = e.x() * direction.y() - e.y() * direction.x();
    if (det >= 0.0) // the ray leaves the plate, which lies to the left; a chord of the curve it starts from is entered
      continue;
    const double distance = (e.x() * d.y() - e.y() * d.x()) / det;
    const double where = (direction.x() * d.y() - direction.y() * d.x()) / det;
    if (where >= 0.0 && where <= 1.0 && distance > itself && distance < least)
      least = distance;
  }
  return least;
}

double EdgeDistance::gap(const Vector2d& from, const Vector2d& direction) const
{
  // A start a little inside keeps the chords of the sampled boundary itself out of the way.
  return along(from + 2e-6 * direction, direction);
}

std::vector<BoundarySample> sample_boundary(const PlateBoundary& boundary, const EdgeDistance& edges, double size,
                                            const std::vector<std::vector<FinerPlace>>& rounds)
{
  std::vector<BoundarySample> samples;
  for (std::size_t l = 0; l < boundary.loops.size(); ++l)
    for (std::size_t p = 0; p < boundary.loops[l].pieces.size(); ++p)
    {
      const CurvePiece& piece = boundary.loops[l].pieces[p];
      const double whole = length(piece);
      for (int k = 0; k < samples_per_piece; ++k)
      {
        const double t = (k + 0.5) / samples_per_piece;
        const CurvePoint point = evaluate(piece, t);
        const double bend = std::abs(point.curvature()); // [1/m]
        const double gap = edges.gap(point.position, point.left());
        samples.push_back({.loop = l,
                           .piece = p,
                           .t = t,
                           .position = point.position,
                           .step = point.first.norm() / samples_per_piece,
                           .size = std::min({size, whole, gap_edges * gap, greatest_turn / std::max(bend, 1e-9)})});
      }
    }
  for (const std::vector<FinerPlace>& round : rounds)
    halve_near(round, samples);
  std::vector<double> graded(samples.size());
  for (std::size_t i = 0; i < samples.size(); ++i)
    graded[i] = size_at(samples, samples[i].position, size);
  for (std::size_t i = 0; i < samples.size(); ++i)
    samples[i].size = graded[i];
  return samples;
}

double size_at(const std::vector<BoundarySample>& samples, const Vector2d& point, double size)
{
  for (const BoundarySample& s : samples)
    if (s.size < size)
      size = std::min(size, s.size + growth * (point - s.position).norm());
  return size;
}

} // namespace plate
