// SPDX-License-Identifier: MPL-2.0
#include "hole_cells.h"

#include <plate/core/error.h>
#include <plate/mesh/planform_region.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>

namespace plate
{
namespace
{

constexpr int points_across = 6;  // of a cell: its charge is resolved to a few per cent next to the edge
constexpr int samples_across = 3; // of a point: how much of it lies in the hole
constexpr double near = 3.0;      // distance of centres in cells up to which points act on points

/// Integral of 1/r over a square of side 1, twice over: 4 ln(1 + sqrt 2) + 4/3 (1 - sqrt 2).
constexpr double square_with_itself = 2.973209;

/// Mean of 1/r between two equal squares: 1/r (1 + s^2 / (12 r^2) + ...), damped so that neighbours are right to 1 %.
double of_squares(double r, double size)
{
  return (1.0 + size * size / (12.0 * (r * r + size * size))) / r;
}

double perimeter(const std::vector<Eigen::Vector2d>& p)
{
  double sum = 0.0;
  for (std::size_t i = 0; i < p.size(); ++i)
    sum += (p[(i + 1) % p.size()] - p[i]).norm();
  return sum;
}

/// Distance from the outline, positive inside.
double depth(const std::vector<Eigen::Vector2d>& outline, const Eigen::Vector2d& at)
{
  double least = std::numeric_limits<double>::infinity();
  bool inside = false;
  for (std::size_t i = 0; i < outline.size(); ++i)
  {
    const Eigen::Vector2d& a = outline[i];
    const Eigen::Vector2d& b = outline[(i + 1) % outline.size()];
    const Eigen::Vector2d along = b - a;
    const double t = std::clamp((at - a).dot(along) / along.squaredNorm(), 0.0, 1.0);
    least = std::min(least, (a + t * along - at).squaredNorm());
    if ((a.y() > at.y()) != (b.y() > at.y()) && at.x() < a.x() + (at.y() - a.y()) / along.y() * along.x())
      inside = !inside;
  }
  return inside ? std::sqrt(least) : -std::sqrt(least);
}

class CellMaker
{
public:
  CellMaker(const std::vector<Eigen::Vector2d>& outline, double size) : outline_(outline), size_(size) {}

  [[nodiscard]] HoleCell cell(const Eigen::Vector2d& corner) const
  {
    HoleCell cell = {
        .points = {}, .centre = Eigen::Vector2d::Zero(), .spread = Eigen::Matrix2d::Zero(), .area = 0.0, .size = size_};
    if (depth(outline_, corner + Eigen::Vector2d::Constant(0.5 * size_)) < -0.75 * size_) // all of it is outside
      return cell;
    double charge = 0.0;
    for (int i = 0; i < points_across; ++i)
      for (int j = 0; j < points_across; ++j)
        add_point(cell, corner + point_size() * Eigen::Vector2d(i, j));
    for (const ChargePoint& point : cell.points)
      charge += point.charge;
    for (ChargePoint& point : cell.points)
    {
      point.charge /= charge;
      cell.centre += point.charge * point.at;
    }
    for (const ChargePoint& point : cell.points)
      cell.spread += point.charge * (point.at - cell.centre) * (point.at - cell.centre).transpose();
    return cell;
  }

private:
  [[nodiscard]] double point_size() const { return size_ / points_across; }

  void add_point(HoleCell& cell, const Eigen::Vector2d& corner) const
  {
    const double step = point_size() / samples_across;
    ChargePoint point = {.at = Eigen::Vector2d::Zero(), .charge = 0.0, .size = 0.0};
    int inside = 0;
    for (int i = 0; i < samples_across; ++i)
      for (int j = 0; j < samples_across; ++j)
      {
        const Eigen::Vector2d at = corner + step * Eigen::Vector2d(i + 0.5, j + 0.5);
        const double d = depth(outline_, at);
        if (d <= 0.0)
          continue;
        ++inside;
        const double charge = 1.0 / std::sqrt(std::max(d, 0.25 * step)); // the mean over the sample's own width
        point.at += charge * at;
        point.charge += charge;
      }
    if (inside == 0)
      return;
    point.at /= point.charge;
    const double area = step * step * inside;
    point.size = std::sqrt(area);
    cell.area += area;
    cell.points.push_back(point);
  }

  const std::vector<Eigen::Vector2d>& outline_;
  double size_; ///< of a cell [m]
};

} // namespace

std::vector<HoleCell> cells_of(const HoleOutline& hole, int cells_across)
{
  const double area = hole.points.size() < 3 ? 0.0 : region_area(PolygonRegion{hole.points});
  if (!(area > 0.0))
    throw InvalidInput(message("hole_flow: an outline of ", hole.points.size(),
                               " points encloses no area; give at "
                               "least three points of a closed polygon"));
  const double size = 2.0 * area / perimeter(hole.points) / cells_across; // twice the area over the length: the width
  Eigen::AlignedBox2d box;
  for (const Eigen::Vector2d& p : hole.points)
    box.extend(p);
  const CellMaker maker(hole.points, size);
  std::vector<HoleCell> cells;
  // The grid sits about the middle, so that a symmetric hole has symmetric cells.
  const Eigen::Vector2i half = (0.5 * box.sizes() / size).array().ceil().cast<int>();
  for (int i = -half.x(); i < half.x(); ++i)
    for (int j = -half.y(); j < half.y(); ++j)
      if (HoleCell cell = maker.cell(box.center() + size * Eigen::Vector2d(i, j)); !cell.points.empty())
        cells.push_back(std::move(cell));
  return cells;
}

double inverse_distance(const HoleCell& a, const HoleCell& b)
{
  const Eigen::Vector2d apart = a.centre - b.centre;
  const double distance = apart.norm();
  if (distance > near * std::max(a.size, b.size))
  {
    const Eigen::Vector2d along = apart / distance;
    const Eigen::Matrix2d spread = a.spread + b.spread;
    return 1.0 / distance + 0.5 * (3.0 * along.dot(spread * along) - spread.trace()) / std::pow(distance, 3);
  }
  double sum = 0.0;
  for (const ChargePoint& p : a.points)
    for (const ChargePoint& q : b.points)
      sum += p.charge * q.charge * (&p == &q ? square_with_itself / p.size : of_squares((p.at - q.at).norm(), p.size));
  return sum;
}

} // namespace plate
