// SPDX-License-Identifier: MPL-2.0
#include <plate/mesh/region_places.h>

#include <plate/core/error.h>

#include <Eigen/Geometry>

#include <optional>
#include <string_view>

namespace plate
{

namespace
{

constexpr int places_per_side = 16; // of the box around a region
constexpr int places_per_line = 200;

std::vector<SharedPlace> places_at(const ShellMesh& mesh, const std::vector<Eigen::Vector2d>& points,
                                   std::string_view what)
{
  const PointLocator locator(mesh);
  std::vector<SharedPlace> places;
  Eigen::Vector2d middle = Eigen::Vector2d::Zero();
  for (const Eigen::Vector2d& point : points)
  {
    middle += point / static_cast<double>(points.size());
    if (const std::optional<MeshPoint> place = locator.locate(point))
      places.push_back({.point = *place, .share = 1.0});
  }
  if (places.empty())
    throw InvalidInput(message("the ", what, " about x = ", middle.x() * 1e3, ", y = ", middle.y() * 1e3,
                               " mm lies beside the plate or in a hole; move it onto the plate"));
  for (SharedPlace& place : places)
    place.share /= static_cast<double>(places.size());
  return places;
}

} // namespace

std::vector<SharedPlace> places_in(const ShellMesh& mesh, const PlanformRegion& region)
{
  Eigen::AlignedBox2d box;
  for (const Eigen::Vector2d& corner : edge_of(region))
    box.extend(corner);
  std::vector<Eigen::Vector2d> points;
  for (int i = 0; i < places_per_side; ++i)
    for (int j = 0; j < places_per_side; ++j)
    {
      const Eigen::Vector2d part((i + 0.5) / places_per_side, (j + 0.5) / places_per_side);
      const Eigen::Vector2d point = box.min() + box.sizes().cwiseProduct(part);
      if (contains(region, point))
        points.push_back(point);
    }
  return places_at(mesh, points, "area");
}

std::vector<SharedPlace> places_along(const ShellMesh& mesh, const Eigen::Vector2d& from, const Eigen::Vector2d& to)
{
  std::vector<Eigen::Vector2d> points;
  for (int i = 0; i < places_per_line; ++i)
    points.emplace_back(from + (i + 0.5) / places_per_line * (to - from));
  return places_at(mesh, points, "line");
}

} // namespace plate
