// SPDX-License-Identifier: MPL-2.0
#include "bar_torsion.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

constexpr int num_intervals = 24; // over the length: with a straight profile from 3 to 12 mm they leave 0.1 %

/// A node of a triangle under the bar.
struct Seat
{
  std::size_t triangle;
  int place;       // of the node in the triangle
  double station;  // [m]
  double sideways; // from the middle of the bar [m]
};

std::vector<Seat> seats(const ShellMesh& mesh, const BarFootprint& footprint, const MaterialAxes& axes,
                        const Eigen::Vector3d& axis)
{
  std::vector<Seat> out;
  const Eigen::Vector3d across = axes.up.cross(axis);
  double middle = 0.0;
  for (const int triangle : footprint.triangles)
    for (int i = 0; i < ShellTriangle::num_nodes; ++i)
    {
      const auto t = static_cast<std::size_t>(triangle);
      const auto node = static_cast<std::size_t>(mesh.triangles[t][static_cast<std::size_t>(i)]);
      out.push_back(
          {.triangle = t, .place = i, .station = footprint.station[node], .sideways = across.dot(mesh.nodes[node])});
      middle += out.back().sideways;
    }
  for (Seat& seat : out)
    seat.sideways -= middle / static_cast<double>(out.size());
  return out;
}

/// The node nearest to a station in the middle of the bar.
///
/// Nodes lie in pairs to both sides of the middle: the first one is kept unless another is nearer by more than
/// rounding, or a mesh moved by a hair would take the other side and torsion would jump.
const Seat& nearest_seat(const std::vector<Seat>& places, double station, double bar_width)
{
  const double rounding = 1e-6 * bar_width;
  const auto beside = [&](const Seat& seat) { return std::hypot(seat.station - station, seat.sideways); };
  const Seat* nearest = &places.front();
  for (const Seat& seat : places)
    if (beside(seat) < beside(*nearest) - rounding)
      nearest = &seat;
  return *nearest;
}

/// Stations of the table: ends, bends of the profile, and equal steps between these.
std::vector<double> stations(const BarProfile& profile, double from, double to)
{
  std::vector<double> bends = {from};
  for (const double s : profile.station)
    if (s > from && s < to)
      bends.push_back(s);
  if (to > from)
    bends.push_back(to);
  std::vector<double> out = {from};
  for (std::size_t i = 0; i + 1 < bends.size(); ++i)
  {
    const double length = bends[i + 1] - bends[i];
    const int steps = std::max(1, static_cast<int>(std::lround(num_intervals * length / (to - from))));
    for (int k = 1; k <= steps; ++k)
      out.push_back(bends[i] + length * k / steps);
  }
  return out;
}

} // namespace

BarTorsion bar_torsion(const Model& model, std::size_t bar, const std::vector<TriangleCover>& covers)
{
  const Bar& glued = model.bars[bar];
  const std::vector<Seat> places = seats(model.mesh, model.mesh.bars[bar], model.material.axes, glued.axis);
  if (places.empty())
    return {};
  const auto [first, last] = std::minmax_element(places.begin(), places.end(),
                                                 [](const Seat& a, const Seat& b) { return a.station < b.station; });
  BarTorsion torsion = {.station = stations(glued.profile, first->station, last->station), .stiffness = {}};
  for (const double s : torsion.station)
  {
    const Seat& seat = nearest_seat(places, s, glued.width);
    const ElementInput element = element_input(model, seat.triangle, covers[seat.triangle]);
    torsion.stiffness.push_back(
        ShellTriangle::bar_torsion(element.nodes, model.material, element.parts, seat.place, glued.profile.at(s)));
  }
  return torsion;
}

} // namespace plate
