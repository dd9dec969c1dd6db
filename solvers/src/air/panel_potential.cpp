// SPDX-License-Identifier: MPL-2.0
#include "panel_potential.h"

#include <plate/elements/quadrature.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

constexpr double close = 1.5;    // distance of centres over the sum of the radii below which panels are close
constexpr double far_away = 6.0; // above this the centres stand for the panels

/// ln of (end + |end|) over (start + |start|) along a line at a distance; end and start measured along it.
double log_ratio(double start, double end, double distance_squared)
{
  const auto sum = [&](double l)
  {
    const double r = std::sqrt(l * l + distance_squared);
    return l >= 0.0 ? l + r : distance_squared / (r - l); // no cancellation
  };
  return std::log(sum(end) / sum(start));
}

double with_itself(const Panel& panel)
{
  const double sides[3] = {(panel.corner[1] - panel.corner[0]).norm(), (panel.corner[2] - panel.corner[1]).norm(),
                           (panel.corner[0] - panel.corner[2]).norm()};
  const double half = 0.5 * (sides[0] + sides[1] + sides[2]);
  double sum = 0.0;
  for (const double side : sides)
    sum -= std::log(1.0 - side / half) / side;
  return 4.0 / 3.0 * panel.area * panel.area * sum;
}

/// Three points inside a panel, exact to degree two: two thirds from each corner to the centre.
Eigen::Vector3d inner_point(const Panel& panel, std::size_t i)
{
  return 0.5 * (panel.corner[i] + panel.centre);
}

} // namespace

std::vector<Panel> panels_with_areas(const PanelMesh& mesh)
{
  std::vector<Panel> panels;
  for (const auto& triangle : mesh.triangles)
  {
    Panel p = {};
    for (std::size_t i = 0; i < 3; ++i)
      p.corner[i] = mesh.vertices[static_cast<std::size_t>(triangle[i])];
    p.centre = (p.corner[0] + p.corner[1] + p.corner[2]) / 3.0;
    const Eigen::Vector3d cross = (p.corner[1] - p.corner[0]).cross(p.corner[2] - p.corner[0]);
    p.area = 0.5 * cross.norm();
    p.normal = cross.normalized();
    for (const Eigen::Vector3d& corner : p.corner)
      p.radius = std::max(p.radius, (corner - p.centre).norm());
    panels.push_back(p);
  }
  return panels;
}

double inverse_distance(const Panel& panel, const Eigen::Vector3d& point)
{
  const double height = std::abs(panel.normal.dot(point - panel.centre));
  double integral = 0.0;
  for (std::size_t i = 0; i < 3; ++i)
  {
    const Eigen::Vector3d& from = panel.corner[i];
    const Eigen::Vector3d& to = panel.corner[(i + 1) % 3];
    const Eigen::Vector3d along = (to - from).normalized();
    const double beside = along.cross(panel.normal).dot(from - point); // of the edge's line, positive outward
    const double start = along.dot(from - point);
    const double end = along.dot(to - point);
    const double line_squared = beside * beside + height * height;
    if (line_squared <= 1e-24 * panel.area) // on the line itself: the edge adds nothing
      continue;
    integral += beside * log_ratio(start, end, line_squared);
    const auto angle = [&](double l)
    { return std::atan2(beside * l, line_squared + height * std::sqrt(l * l + line_squared)); };
    integral -= height * (angle(end) - angle(start));
  }
  return integral;
}

double inverse_distance(const Panel& a, const Panel& b)
{
  const double distance = (a.centre - b.centre).norm();
  if (distance == 0.0)
    return with_itself(a);
  const double reach = a.radius + b.radius;
  if (distance > far_away * reach)
    return a.area * b.area / distance;
  double sum = 0.0;
  if (distance > close * reach)
  {
    for (std::size_t i = 0; i < 3; ++i)
      for (std::size_t j = 0; j < 3; ++j)
        sum += 1.0 / (inner_point(a, i) - inner_point(b, j)).norm();
    return a.area * b.area * sum / 9.0;
  }
  for (const TrianglePoint& p : triangle_points()) // weights add up to one half
    sum += p.weight *
           inverse_distance(b, a.corner[0] + p.xi * (a.corner[1] - a.corner[0]) + p.eta * (a.corner[2] - a.corner[0]));
  return 2.0 * a.area * sum;
}

} // namespace plate
