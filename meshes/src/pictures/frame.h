// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "polyline.h"

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate
{

/// Where a plate stands on the page: neck end up, +y (bass side of a top) to the left, one scale for both directions.
struct Frame
{
  Eigen::Vector2d plate_centre; ///< middle of the plate's extent (x, y) [m]
  Eigen::Vector2d page_centre;  ///< picture units
  double scale = 0.0;           ///< picture units per metre

  [[nodiscard]] Eigen::Vector2d on_page(const Eigen::Vector2d& place) const
  {
    const Eigen::Vector2d d = place - plate_centre;
    return page_centre + scale * Eigen::Vector2d(-d[1], -d[0]);
  }
  [[nodiscard]] Eigen::Vector2d on_plate(const Eigen::Vector2d& place) const
  {
    const Eigen::Vector2d d = (place - page_centre) / scale;
    return plate_centre - Eigen::Vector2d(d[1], d[0]);
  }
};

/// Lines of the plate's plane on the page, with points left out that no eye would miss.
[[nodiscard]] std::vector<Polyline> on_page(const Frame& frame, std::span<const Polyline> lines);

} // namespace plate
