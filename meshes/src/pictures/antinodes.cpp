// SPDX-License-Identifier: MPL-2.0
#include "antinodes.h"

#include "nearby_points.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

namespace plate
{

namespace
{

// What deserves a sign, relative to the largest displacement of the plate and of the nodal domain.
constexpr double least_of_plate = 0.08;
constexpr double least_of_domain = 0.6;
constexpr double separation = 0.2;   // of antinodes in one domain, part of the plate's greatest extent
constexpr double reach = 5.0;        // how far a sign may move from its antinode, in half-widths
constexpr double tight_room = 1.05;  // the same for the only sign of a small domain
constexpr double wanted_room = 1.35; // distance from lines and edges, in half-widths

/// Connected sets of points with one sign, by union and find.
class Domains
{
public:
  Domains(const ContouredField& field) : root_(field.values().size())
  {
    std::iota(root_.begin(), root_.end(), 0);
    const auto positive = [&](int point) { return field.values()[static_cast<std::size_t>(point)] >= 0.0; };
    for (const auto& triangle : field.surface().triangles)
      for (std::size_t k = 0; k < 3; ++k)
        if (positive(triangle[k]) == positive(triangle[(k + 1) % 3]))
          root_[static_cast<std::size_t>(root(triangle[k]))] = root(triangle[(k + 1) % 3]);
  }

  int root(int point)
  {
    while (root_[static_cast<std::size_t>(point)] != point)
    {
      int& up = root_[static_cast<std::size_t>(point)];
      up = root_[static_cast<std::size_t>(up)];
      point = up;
    }
    return point;
  }

private:
  std::vector<int> root_;
};

/// Points not exceeded by a neighbour, largest displacement first.
std::vector<int> local_extrema(const ContouredField& field)
{
  const std::vector<double>& values = field.values();
  const auto size = [&](int point) { return std::abs(values[static_cast<std::size_t>(point)]); };
  std::vector<bool> exceeded(values.size(), false);
  for (const auto& triangle : field.surface().triangles)
    for (std::size_t k = 0; k < 3; ++k)
    {
      const int p = triangle[k];
      const int q = triangle[(k + 1) % 3];
      if (size(p) != size(q))
        exceeded[static_cast<std::size_t>(size(p) < size(q) ? p : q)] = true;
    }
  std::vector<int> extrema;
  for (std::size_t p = 0; p < values.size(); ++p)
    if (!exceeded[p] && std::abs(values[p]) >= least_of_plate)
      extrema.push_back(static_cast<int>(p));
  std::stable_sort(extrema.begin(), extrema.end(), [&](int p, int q) { return size(p) > size(q); });
  return extrema;
}

/// Greatest extent in x or y [m].
double extent(const RefinedSurface& surface)
{
  Eigen::Vector2d low = surface.points.front();
  Eigen::Vector2d high = low;
  for (const Eigen::Vector2d& point : surface.points)
  {
    low = low.cwiseMin(point);
    high = high.cwiseMax(point);
  }
  return (high - low).maxCoeff();
}

/// Points of all edges and nodal lines and those taken, dense enough to measure distances from.
std::vector<Eigen::Vector2d> obstacles(const ContouredField& field, std::span<const Eigen::Vector2d> taken)
{
  std::vector<Eigen::Vector2d> points(taken.begin(), taken.end());
  for (const auto& lines : {boundary_lines(field.surface()), field.lines(0.0)})
    for (const Polyline& line : lines)
      points.insert(points.end(), line.points.begin(), line.points.end());
  return points;
}

class SignPlacer
{
public:
  SignPlacer(const ContouredField& field, double half_width, std::span<const Eigen::Vector2d> taken)
      : field_(field), half_width_(half_width), domains_(field),
        obstacles_(obstacles(field, taken), wanted_room * half_width),
        separation_(std::max(separation * extent(field.surface()), 2.6 * half_width))
  {
  }

  std::vector<Antinode> place()
  {
    for (const int extremum : local_extrema(field_))
      try_extremum(extremum);
    return std::move(signs_);
  }

private:
  struct Accepted
  {
    int domain = 0;
    double largest = 0.0;
    Eigen::Vector2d origin; ///< the antinode itself [m]
    Eigen::Vector2d place;  ///< of its sign [m]
  };

  const Eigen::Vector2d& position(int point) const { return field_.surface().points[static_cast<std::size_t>(point)]; }
  double value(int point) const { return field_.values()[static_cast<std::size_t>(point)]; }

  void try_extremum(int extremum)
  {
    const int domain = domains_.root(extremum);
    for (const Accepted& accepted : accepted_)
      if (accepted.domain == domain && (std::abs(value(extremum)) < least_of_domain * accepted.largest ||
                                        (accepted.origin - position(extremum)).norm() < separation_))
        return;
    const bool is_first = std::none_of(accepted_.begin(), accepted_.end(),
                                       [&](const Accepted& accepted) { return accepted.domain == domain; });
    const std::optional<int> found = roomy_point(extremum, domain, is_first);
    if (!found || is_beside_own_kind(*found, domain))
      return;
    const double largest = std::abs(value(extremum));
    accepted_.push_back(
        {.domain = domain, .largest = largest, .origin = position(extremum), .place = position(*found)});
    signs_.push_back({.position = position(*found), .value = value(*found)});
  }

  /// Whether a sign would stand beside another of its domain, both having moved to where there is room.
  bool is_beside_own_kind(int point, int domain) const
  {
    return std::any_of(accepted_.begin(), accepted_.end(),
                       [&](const Accepted& other) {
                         return other.domain == domain && (other.place - position(point)).norm() < 0.75 * separation_;
                       });
  }

  /// The point of largest displacement near the antinode that leaves room for the sign; less room if it may be tight.
  std::optional<int> roomy_point(int extremum, int domain, bool may_be_tight)
  {
    std::vector<int> near;
    for (std::size_t p = 0; p < field_.values().size(); ++p)
    {
      const int point = static_cast<int>(p);
      if ((position(point) - position(extremum)).norm() <= reach * half_width_ && domains_.root(point) == domain)
        near.push_back(point);
    }
    std::stable_sort(near.begin(), near.end(), [&](int p, int q) { return std::abs(value(p)) > std::abs(value(q)); });
    for (const double room : {wanted_room, tight_room})
      if (room == wanted_room || may_be_tight)
        for (const int point : near)
          if (is_free(position(point), room * half_width_))
            return point;
    return std::nullopt;
  }

  bool is_free(const Eigen::Vector2d& place, double room) const
  {
    const auto apart = [&](const Antinode& s) { return (s.position - place).norm() >= 2.6 * half_width_; };
    return std::all_of(signs_.begin(), signs_.end(), apart) && !obstacles_.any_within(place, room);
  }

  const ContouredField& field_;
  double half_width_;
  Domains domains_;
  NearbyPoints obstacles_;
  double separation_; ///< [m]
  std::vector<Accepted> accepted_;
  std::vector<Antinode> signs_;
};

} // namespace

std::vector<Antinode> find_antinodes(const ContouredField& field, double half_width,
                                     std::span<const Eigen::Vector2d> taken)
{
  return SignPlacer(field, half_width, taken).place();
}

} // namespace plate
