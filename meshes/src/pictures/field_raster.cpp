// SPDX-License-Identifier: MPL-2.0
#include "field_raster.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace plate
{

namespace
{

constexpr double off_plate = std::numeric_limits<double>::quiet_NaN();

double cross(const Eigen::Vector2d& p, const Eigen::Vector2d& q)
{
  return p[0] * q[1] - p[1] * q[0];
}

/// Fills the pixels whose centres lie in a triangle; places in pixels from the raster's corner.
void fill_triangle(FieldRaster& raster, const std::array<Eigen::Vector2d, 3>& at, const std::array<double, 3>& values)
{
  constexpr double rounding = 1e-9;
  const double area = cross(at[1] - at[0], at[2] - at[0]);
  if (area == 0.0)
    return;
  const Eigen::Vector2d low = at[0].cwiseMin(at[1]).cwiseMin(at[2]);
  const Eigen::Vector2d high = at[0].cwiseMax(at[1]).cwiseMax(at[2]);
  const auto first = [](double edge) { return static_cast<int>(std::ceil(edge - 0.5)); };
  const auto last = [](double edge) { return static_cast<int>(std::floor(edge - 0.5)); };
  for (int row = first(low[1]); row <= last(high[1]); ++row)
    for (int column = first(low[0]); column <= last(high[0]); ++column)
    {
      const Eigen::Vector2d d = Eigen::Vector2d(column + 0.5, row + 0.5) - at[0];
      const double s = cross(d, at[2] - at[0]) / area;
      const double t = cross(at[1] - at[0], d) / area;
      if (s >= -rounding && t >= -rounding && s + t <= 1.0 + rounding)
        raster.values[static_cast<std::size_t>(row * raster.width + column)] =
            values[0] + s * (values[1] - values[0]) + t * (values[2] - values[0]);
    }
}

/// Gives each empty pixel beside full ones their mean.
void grow(FieldRaster& raster)
{
  const std::vector<double> before = raster.values;
  for (int row = 0; row < raster.height; ++row)
    for (int column = 0; column < raster.width; ++column)
    {
      const int here = row * raster.width + column;
      if (!std::isnan(before[static_cast<std::size_t>(here)]))
        continue;
      double sum = 0.0;
      int count = 0;
      const auto add = [&](bool exists, int neighbour)
      {
        if (!exists || std::isnan(before[static_cast<std::size_t>(neighbour)]))
          return;
        sum += before[static_cast<std::size_t>(neighbour)];
        ++count;
      };
      add(column > 0, here - 1);
      add(column + 1 < raster.width, here + 1);
      add(row > 0, here - raster.width);
      add(row + 1 < raster.height, here + raster.width);
      if (count > 0)
        raster.values[static_cast<std::size_t>(here)] = sum / count;
    }
}

} // namespace

FieldRaster rasterise(const ContouredField& field, const Frame& frame, double pixels_per_unit)
{
  const RefinedSurface& surface = field.surface();
  std::vector<Eigen::Vector2d> places;
  places.reserve(surface.points.size());
  Eigen::Vector2d low = frame.on_page(surface.points.front());
  Eigen::Vector2d high = low;
  for (const Eigen::Vector2d& point : surface.points)
  {
    places.push_back(frame.on_page(point));
    low = low.cwiseMin(places.back());
    high = high.cwiseMax(places.back());
  }
  const auto whole = [](const Eigen::Vector2d& p) { return Eigen::Vector2d(std::floor(p[0]), std::floor(p[1])); };
  const Eigen::Vector2d margin(2.0, 2.0);
  const Eigen::Vector2d corner = whole(low - margin);
  const Eigen::Vector2d size = pixels_per_unit * (whole(high + 2.0 * margin) - corner);
  FieldRaster raster{
      .corner = corner, .width = static_cast<int>(size[0]), .height = static_cast<int>(size[1]), .values = {}};
  raster.values.assign(static_cast<std::size_t>(raster.width * raster.height), off_plate);
  for (const std::array<int, 3>& triangle : surface.triangles)
  {
    std::array<Eigen::Vector2d, 3> at;
    std::array<double, 3> values{};
    for (std::size_t k = 0; k < 3; ++k)
    {
      const auto point = static_cast<std::size_t>(triangle[k]);
      at[k] = pixels_per_unit * (places[point] - corner);
      values[k] = field.values()[point];
    }
    fill_triangle(raster, at, values);
  }
  grow(raster);
  grow(raster);
  return raster;
}

PixelImage coloured(const FieldRaster& raster, const ColourMap& map, double low, double high)
{
  constexpr int num_colours = 256; // finer steps than an eye can tell, and files that compress well
  const auto channel = [](double v)
  { return static_cast<std::uint32_t>(std::lround(255.0 * std::clamp(v, 0.0, 1.0))); };
  std::array<std::uint32_t, num_colours> table{};
  for (std::size_t k = 0; k < table.size(); ++k)
  {
    const Colour colour = map.colour(static_cast<double>(k) / (num_colours - 1));
    table[k] = (channel(colour.red) << 16U) | (channel(colour.green) << 8U) | channel(colour.blue);
  }
  constexpr std::uint32_t paper = 0xFFFFFFU;
  PixelImage image{.width = raster.width, .height = raster.height, .pixels = {}};
  image.pixels.reserve(raster.values.size());
  for (const double value : raster.values)
  {
    const double part = high > low ? std::clamp((value - low) / (high - low), 0.0, 1.0) : 0.5;
    image.pixels.push_back(std::isnan(value) ? paper
                                             : table[static_cast<std::size_t>(std::lround(part * (num_colours - 1)))]);
  }
  return image;
}

} // namespace plate
