// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "canvas.h"
#include "contour.h"

#include <plate/meshes/picture.h>

#include <Eigen/Core>

#include <span>
#include <string>
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
};

/// A plate made ready for drawing: refined once, edges and bars traced once.
class PlateDrawing
{
public:
  /// The view's mesh must outlive the drawing. Curves are followed in steps of about the extent divided by `pieces`.
  explicit PlateDrawing(const PlateView& view, int pieces = 300);

  [[nodiscard]] const RefinedSurface& surface() const { return surface_; }
  [[nodiscard]] double body_length() const { return high_[0] - low_[0]; } ///< extent in x [m]
  [[nodiscard]] double body_width() const { return high_[1] - low_[1]; }  ///< extent in y [m]

  /// Frame that fits the plate into a box of the page.
  [[nodiscard]] Frame fit(const Eigen::Vector2d& corner, const Eigen::Vector2d& size) const;

  /// Bands of a field: colour 0 below the first level, colour k from level k - 1 on.
  void fill_bands(Canvas& canvas, const Frame& frame, const ContouredField& field, std::span<const double> levels,
                  std::span<const Colour> colours) const;
  /// Outline and soundholes.
  void stroke_edges(Canvas& canvas, const Frame& frame, double width) const;
  /// Footprints of bars, which are on the hidden side: thin and dashed.
  void stroke_bars(Canvas& canvas, const Frame& frame, double width) const;
  [[nodiscard]] bool has_bars() const { return !bars_.empty(); }

private:
  RefinedSurface surface_;
  std::vector<Polyline> edges_; ///< [m]
  std::vector<Polyline> bars_;  ///< [m]
  Eigen::Vector2d low_;         ///< [m]
  Eigen::Vector2d high_;        ///< [m]
};

/// Lines of the plate's plane on the page, with points left out that no eye would miss.
[[nodiscard]] std::vector<Polyline> on_page(const Frame& frame, std::span<const Polyline> lines);

/// A number with fixed decimals and a true minus sign.
[[nodiscard]] std::string label_number(double value, int decimals);

/// Names of neck end and sides around a frame whose plate fills width × height.
void draw_directions(Canvas& canvas, const PlateView& view, const Frame& frame, double width, double height);

/// A length of 50 mm (or another round one for large and small plates) at the frame's scale, left end at `start`.
void draw_scale_bar(Canvas& canvas, const Frame& frame, const Eigen::Vector2d& start);

/// A short piece of a line and what it means.
void draw_line_key(Canvas& canvas, const Eigen::Vector2d& start, const Pen& pen, const std::string& words);

/// Says what the dashed lines are, if the plate has a bar.
void draw_bar_key(Canvas& canvas, const PlateDrawing& drawing, const Eigen::Vector2d& start);

/// A row of colour fields with labels under chosen boundaries between them.
struct ColourBar
{
  struct Tick
  {
    double at = 0.0;   ///< 0 left end to 1 right end [-]
    std::string label; ///< may be empty
  };
  std::vector<Colour> colours;
  std::vector<Tick> ticks;
  std::string caption;
};
void draw_colour_bar(Canvas& canvas, const ColourBar& bar, const Eigen::Vector2d& corner, double width);

} // namespace plate
