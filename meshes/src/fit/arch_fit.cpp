// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/arch_fit.h>

#include "robust.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace plate
{

namespace
{

constexpr int chords_per_piece = 16;  // of the outline as a region: their distance from it does not matter
constexpr double outlier_part = 0.01; // of the arch's height: less is no outlier

std::vector<SurfacePoint> deviations(std::span<const SurfacePoint> points, const ArchSurface& arch)
{
  std::vector<SurfacePoint> out(points.begin(), points.end());
  for (SurfacePoint& p : out)
    p.value -= arch.at(p.place).z;
  return out;
}

// Mean size of the deviations from their median: outliers count little.
double misfit(const std::vector<SurfacePoint>& points)
{
  std::vector<double> values;
  for (const SurfacePoint& p : points)
    values.push_back(p.value);
  const double middle = median(values);
  double sum = 0.0;
  for (const double v : values)
    sum += std::abs(v - middle);
  return sum / static_cast<double>(points.size());
}

// Height of the cycloid arch nearest to the points, by golden section; nothing if the outline takes none.
std::optional<double> nearest_cycloid(std::span<const SurfacePoint> points, const Outline& outline)
{
  double high = 0.0;
  try
  {
    high = greatest_cycloid_height(outline);
  }
  catch (const InvalidInput&)
  {
    return std::nullopt;
  }
  const auto miss = [&](double height)
  { return misfit(deviations(points, ArchSurface(outline, CycloidArching{height}))); };
  constexpr double share = 0.6180339887498949;
  constexpr int steps = 18; // to a ten-thousandth of the range
  double low = 0.0;
  double left = high - share * (high - low), right = low + share * (high - low);
  double miss_left = miss(left), miss_right = miss(right);
  for (int k = 0; k < steps; ++k)
    if (miss_left < miss_right)
    {
      high = std::exchange(right, left);
      miss_right = miss_left;
      left = high - share * (high - low);
      miss_left = miss(left);
    }
    else
    {
      low = std::exchange(left, right);
      miss_left = miss_right;
      right = low + share * (high - low);
      miss_right = miss(right);
    }
  return 0.5 * (low + high);
}

// The fit of the deviations from a cycloid arch as one of the arch.
ArchFit over_cycloid(double height, SurfaceFit fit)
{
  return {.arching = {.cycloid_height = height, .deviation = std::move(fit.surface)}, .report = std::move(fit.report)};
}

} // namespace

ArchFit fit_arching(std::span<const SurfacePoint> points, const Outline& outline)
{
  const std::vector<Eigen::Vector2d> region = sample(outline_loop(outline), chords_per_piece);
  SurfaceFit plain = fit_surface(points, region);
  const std::optional<double> height = nearest_cycloid(points, outline);
  if (!height)
    return over_cycloid(0.0, std::move(plain));
  const double least_outlier = outlier_part * *height;
  SurfaceFit rest =
      fit_surface(deviations(points, ArchSurface(outline, CycloidArching{*height})), region, least_outlier);
  return rest.cross_validated < plain.cross_validated ? over_cycloid(*height, std::move(rest))
                                                      : over_cycloid(0.0, std::move(plain));
}

} // namespace plate
