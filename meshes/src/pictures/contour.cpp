// SPDX-License-Identifier: MPL-2.0
#include "contour.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <unordered_map>
#include <utility>

namespace plate
{

namespace
{

/// A point of a contour: on an edge of the surface (even key) or a point of the surface (odd key).
struct Joint
{
  long key = 0;
  Eigen::Vector2d place; ///< [m]
};

struct Piece
{
  Joint from;
  Joint to;
};

long edge_key(int edge)
{
  return 2L * edge;
}
long point_key(int point)
{
  return 2L * point + 1L;
}

Joint point_joint(const RefinedSurface& surface, int point)
{
  return {.key = point_key(point), .place = surface.points[static_cast<std::size_t>(point)]};
}

/// Chains pieces that share joints; open chains first, then loops, each group in the order of the pieces.
class Chainer
{
public:
  explicit Chainer(const std::vector<Piece>& pieces) : pieces_(pieces), used_(pieces.size(), false)
  {
    for (std::size_t i = 0; i < pieces.size(); ++i)
    {
      starting_[pieces[i].from.key].push_back(i);
      ending_.insert(pieces[i].to.key);
    }
  }

  std::vector<Polyline> chains()
  {
    for (std::size_t i = 0; i < pieces_.size(); ++i)
      if (!used_[i] && !ending_.contains(pieces_[i].from.key))
        follow(i);
    for (std::size_t i = 0; i < pieces_.size(); ++i)
      if (!used_[i])
        follow(i);
    return std::move(result_);
  }

private:
  void follow(std::size_t first)
  {
    Polyline line;
    append(line, pieces_[first].from.place);
    for (std::size_t piece = first; piece != none; piece = next(pieces_[piece].to.key))
    {
      used_[piece] = true;
      if (pieces_[piece].to.key == pieces_[first].from.key)
      {
        line.closed = true;
        break;
      }
      append(line, pieces_[piece].to.place);
    }
    if (line.closed && line.points.size() > 1 && line.points.front() == line.points.back())
      line.points.pop_back();
    if (line.points.size() > 1)
      result_.push_back(std::move(line));
  }

  std::size_t next(long key) const
  {
    const auto found = starting_.find(key);
    if (found != starting_.end())
      for (const std::size_t piece : found->second)
        if (!used_[piece])
          return piece;
    return none;
  }

  static void append(Polyline& line, const Eigen::Vector2d& place)
  {
    if (line.points.empty() || line.points.back() != place)
      line.points.push_back(place);
  }

  static constexpr std::size_t none = static_cast<std::size_t>(-1);
  const std::vector<Piece>& pieces_;
  std::vector<bool> used_;
  std::unordered_map<long, std::vector<std::size_t>> starting_;
  std::set<long> ending_;
  std::vector<Polyline> result_;
};

/// Root in [0, 1] of a function with f(0) >= 0 > f(1), by the Illinois variant of the rule of false position.
template <class Function>
double bracketed_root(const Function& f, double f0, double f1)
{
  constexpr int most_steps = 60; // a cubic needs about 8; the bracket holds whatever happens
  constexpr double close = 1e-13;
  double low = 0.0;
  double high = 1.0;
  double t = 0.0;
  for (int step = 0; step < most_steps && high - low > close; ++step)
  {
    t = low + (high - low) * f0 / (f0 - f1);
    const double value = f(t);
    if (value == 0.0)
      break;
    if (value > 0.0)
    {
      low = t;
      f0 = value;
      f1 *= 0.5;
    }
    else
    {
      high = t;
      f1 = value;
      f0 *= 0.5;
    }
  }
  return t;
}

/// Contours one field at one level.
class Tracer
{
public:
  struct Field
  {
    const RefinedSurface& surface;
    std::span<const double> nodal;
    const std::vector<double>& values; ///< at the surface's points
    Interpolation interpolation;
    double rounding; ///< values so close to the level count as equal to it
  };

  Tracer(const Field& field, double level)
      : surface_(field.surface), nodal_(field.nodal), values_(field.values), interpolation_(field.interpolation),
        rounding_(field.rounding), level_(level)
  {
  }

  void add_contour(std::vector<Piece>& pieces)
  {
    for (std::size_t t = 0; t < surface_.triangles.size(); ++t)
    {
      const auto& triangle = surface_.triangles[t];
      int leaves = -1; // side on which the boundary of the triangle leaves the region above
      int enters = -1;
      for (std::size_t k = 0; k < 3; ++k)
      {
        const bool from = above(triangle[k]);
        const bool to = above(triangle[(k + 1) % 3]);
        if (from && !to)
          leaves = static_cast<int>(k);
        if (!from && to)
          enters = static_cast<int>(k);
      }
      // Walking the triangle counter-clockwise, the region lies to the left of the way from exit to entrance.
      if (leaves >= 0)
        pieces.push_back({.from = crossing(static_cast<int>(t), leaves), .to = crossing(static_cast<int>(t), enters)});
    }
  }

private:
  bool above(int point) const { return values_[static_cast<std::size_t>(point)] >= level_ - rounding_; }

  Joint crossing(int triangle, int side)
  {
    const auto t = static_cast<std::size_t>(triangle);
    const auto k = static_cast<std::size_t>(side);
    const int edge = surface_.edges[t][k];
    const auto known = crossings_.find(edge);
    if (known != crossings_.end())
      return {.key = edge_key(edge), .place = known->second};

    std::size_t high = k;
    std::size_t low = (k + 1) % 3;
    if (!above(surface_.triangles[t][high]))
      std::swap(high, low);
    const Eigen::Vector2d rs_high = surface_.corners(triangle)[high];
    const Eigen::Vector2d rs_low = surface_.corners(triangle)[low];
    const int parent = surface_.parent(triangle);
    const auto excess = [&](double x)
    { return surface_.value(nodal_, parent, rs_high + x * (rs_low - rs_high)) - level_; };
    const double at_high = values_[static_cast<std::size_t>(surface_.triangles[t][high])] - level_;
    const double at_low = values_[static_cast<std::size_t>(surface_.triangles[t][low])] - level_;
    double x = 0.0;
    if (at_high > rounding_)
      x = interpolation_ == Interpolation::cubic ? bracketed_root(excess, at_high, at_low)
                                                 : at_high / (at_high - at_low);
    const Eigen::Vector2d place = surface_.place(parent, rs_high + x * (rs_low - rs_high));
    crossings_.emplace(edge, place);
    return {.key = edge_key(edge), .place = place};
  }

  const RefinedSurface& surface_;
  std::span<const double> nodal_;
  const std::vector<double>& values_;
  Interpolation interpolation_;
  double rounding_;
  double level_;
  std::unordered_map<int, Eigen::Vector2d> crossings_;
};

} // namespace

ContouredField::ContouredField(const RefinedSurface& surface, std::span<const double> nodal,
                               Interpolation interpolation)
    : surface_(surface), nodal_(nodal), interpolation_(interpolation)
{
  if (nodal.size() != surface.mesh.nodes.size())
    throw InvalidInput(message("picture: the field has ", nodal.size(), " values, the mesh ", surface.mesh.nodes.size(),
                               " nodes; was it computed on another mesh?"));
  for (std::size_t i = 0; i < nodal.size(); ++i)
    if (!std::isfinite(nodal[i]))
      throw InvalidInput(
          message("picture: the field has the value ", nodal[i], " at node ", i, "; all values must be finite"));
  values_ = sample(surface, nodal, interpolation);
  const auto [low, high] = std::minmax_element(values_.begin(), values_.end());
  lowest_ = *low;
  highest_ = *high;
  rounding_ = 1e-12 * std::max(std::abs(*low), std::abs(*high));
}

std::vector<Polyline> ContouredField::lines(double level) const
{
  std::vector<Piece> pieces;
  Tracer({surface_, nodal_, values_, interpolation_, rounding_}, level).add_contour(pieces);
  return Chainer(pieces).chains();
}

std::vector<Polyline> boundary_lines(const RefinedSurface& surface)
{
  std::vector<Piece> pieces;
  for (const RefinedSurface::BoundaryEdge& edge : surface.boundary)
    pieces.push_back({.from = point_joint(surface, edge.from), .to = point_joint(surface, edge.to)});
  return Chainer(pieces).chains();
}

std::vector<Polyline> outline_of(const RefinedSurface& surface, std::span<const int> mesh_triangles)
{
  std::vector<bool> chosen(surface.mesh.triangles.size(), false);
  for (const int triangle : mesh_triangles)
    chosen.at(static_cast<std::size_t>(triangle)) = true;
  std::unordered_map<int, int> uses;
  for (std::size_t t = 0; t < surface.triangles.size(); ++t)
    if (chosen[static_cast<std::size_t>(surface.parent(static_cast<int>(t)))])
      for (const int edge : surface.edges[t])
        ++uses[edge];
  std::vector<Piece> pieces;
  for (std::size_t t = 0; t < surface.triangles.size(); ++t)
    for (std::size_t k = 0; k < 3; ++k)
      if (chosen[static_cast<std::size_t>(surface.parent(static_cast<int>(t)))] && uses[surface.edges[t][k]] == 1)
        pieces.push_back({.from = point_joint(surface, surface.triangles[t][k]),
                          .to = point_joint(surface, surface.triangles[t][(k + 1) % 3])});
  return Chainer(pieces).chains();
}

} // namespace plate
