// SPDX-License-Identifier: MPL-2.0
#include "read_parts.h"

#include "read_layup.h"

#include <plate/core/error.h>

#include <Eigen/Geometry>

namespace plate
{
namespace
{

PlanformRegion read_region(const TableReader& table)
{
  const std::string shape = table.text("shape");
  table.check_kind(shape, "shape");
  if (shape == "polygon")
    return PolygonRegion{table.points("points")};
  const std::vector<double> centre = table.numbers("centre");
  const std::vector<double> axes = table.numbers("axes");
  return EllipseRegion{
      .centre = {centre[0], centre[1]}, .axes = {axes[0], axes[1]}, .angle = Angle::radians(table.number("angle"))};
}

/// Whether a point of a grid over the region lies in it and on the plate.
bool lies_on_plate(const PlanformRegion& region, const PlateGeometry& geometry)
{
  constexpr int points = 40; // a side; a patch of which only a finer grid finds a part is a slip
  Eigen::AlignedBox2d box;
  for (const Eigen::Vector2d& point : edge_of(region))
    box.extend(point);
  const PlanformCover cover(geometry);
  for (int i = 0; i < points; ++i)
    for (int j = 0; j < points; ++j)
    {
      const Eigen::Vector2d point =
          box.min() + box.sizes().cwiseProduct(Eigen::Vector2d((i + 0.5) / points, (j + 0.5) / points));
      if (contains(region, point) && cover.contains(point))
        return true;
    }
  return false;
}

} // namespace

std::vector<Patch> read_patches(const TableReader& root, const MaterialStock& stock, const PlateGeometry& geometry)
{
  std::vector<Patch> patches;
  for (const TableReader& table : root.tables("patch"))
  {
    const bool outside = table.word("side", "inside") == "outside";
    Patch patch = {.side = outside ? PlateSide::outside : PlateSide::inside,
                   .region = read_region(table),
                   .laminate = read_ply_list(table, stock)};
    try
    {
      check_region(patch.region);
    }
    catch (const InvalidInput& error)
    {
      table.fail_here(error.what());
    }
    if (!lies_on_plate(patch.region, geometry))
      table.fail_here("lies beside the plate; x runs along the body towards the neck, y to the bass side, and the "
                      "origin is on the centre line at half the length");
    patches.push_back(std::move(patch));
  }
  return patches;
}

std::vector<PointMass> read_masses(const TableReader& root, const PlateGeometry& geometry)
{
  const PlanformCover cover(geometry);
  std::vector<PointMass> masses;
  for (const TableReader& table : root.tables("mass"))
  {
    const std::vector<double> at = table.numbers("at");
    const PointMass mass = {.at = {at[0], at[1]}, .mass = table.number("grams")};
    if (!cover.contains(mass.at))
      table.fail("at", "lies beside the plate or in a hole");
    masses.push_back(mass);
  }
  return masses;
}

} // namespace plate
