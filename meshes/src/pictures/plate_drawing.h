// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "contour.h"
#include "field_raster.h"
#include "frame.h"
#include "legend.h"

#include <plate/meshes/picture.h>

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// How strongly a plate is drawn; sizes in picture units.
struct PlateStyle
{
  double edge_width = 1.2;
  double fine_width = 0.85;  ///< of bars and regions
  double point_radius = 3.5; ///< of the sign of a marked point
  bool label_points = true;  ///< writes the labels beside marked points
};

/// A plate made ready for drawing: refined once, edges and bars traced once.
class PlateDrawing
{
public:
  /// The view's mesh must outlive the drawing. Curves are followed in steps of about the extent divided by `pieces`.
  /// @throws InvalidInput if a region or marked point of the view is not finite, or a region has under three corners
  explicit PlateDrawing(const PlateView& view, int pieces = 300);

  [[nodiscard]] const RefinedSurface& surface() const { return surface_; }
  [[nodiscard]] double body_length() const { return high_[0] - low_[0]; } ///< extent in x [m]
  [[nodiscard]] double body_width() const { return high_[1] - low_[1]; }  ///< extent in y [m]

  /// Frame that fits the plate into a box of the page.
  [[nodiscard]] Frame fit(const Eigen::Vector2d& corner, const Eigen::Vector2d& size) const;

  /// Colours of a field, from `low` to `high` on the map.
  void fill(Canvas& canvas, const Frame& frame, const ContouredField& field, const ColourMap& map, double low,
            double high) const;
  /// Bars, regions, outline and soundholes.
  void stroke(Canvas& canvas, const Frame& frame, const PlateStyle& style) const;
  /// All lines that stroke() draws [m].
  [[nodiscard]] std::vector<Polyline> lines() const;
  /// Marked points, to be drawn on top of all else.
  void draw_points(Canvas& canvas, const Frame& frame, const PlateStyle& style) const;

  /// Lines through marked points and their labels, to be kept clear of by other signs [picture units].
  [[nodiscard]] std::vector<Polyline> taken_by_points(const Frame& frame, const PlateStyle& style) const;

  /// Explains bars, regions and marked points, as far as there are any.
  [[nodiscard]] std::vector<LegendItem> legend_items(const PlateStyle& style = {}) const;

private:
  RefinedSurface surface_;
  std::vector<Polyline> edges_;   ///< [m]
  std::vector<Polyline> bars_;    ///< [m]
  std::vector<Polyline> regions_; ///< [m]
  std::vector<MarkedPoint> points_;
  std::vector<std::string> region_labels_; ///< each once
  std::vector<std::string> point_labels_;  ///< each once
  Eigen::Vector2d low_;                    ///< [m]
  Eigen::Vector2d high_;                   ///< [m]
};

/// Names of neck end and sides around a frame whose plate fills a size.
void draw_directions(Canvas& canvas, const PlateView& view, const Frame& frame, const Eigen::Vector2d& size);

} // namespace plate
