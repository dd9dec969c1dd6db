// SPDX-License-Identifier: MPL-2.0
#include "plate_drawing.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

constexpr double label_gap = 3.0; // between the sign of a point and its label, picture units
constexpr TextStyle point_label{.size = label_text.size, .halo = true};

/// Where the label of a point begins and how it is set: towards the middle of the plate, where there is room.
struct PointLabel
{
  Eigen::Vector2d anchor; ///< picture units
  TextStyle style = point_label;
  double direction = 1.0; ///< 1 to the right, -1 to the left
};

PointLabel label_of(const Eigen::Vector2d& centre, const Frame& frame, double radius)
{
  const bool to_left = centre[0] > frame.page_centre[0];
  const double direction = to_left ? -1.0 : 1.0;
  return {.anchor = centre + Eigen::Vector2d(direction * (radius + label_gap), 0.0),
          .style = aligned(point_label, to_left ? Align::right : Align::left),
          .direction = direction};
}

/// Dashes dark and light by turns: they show on any colour.
std::vector<Pen> dashed(double width, std::array<double, 4> pattern)
{
  for (double& length : pattern)
    length *= width;
  return {{.colour = white, .width = width}, {.colour = black, .width = width, .dashes = pattern}};
}

std::vector<Pen> bar_pens(double width)
{
  return dashed(width, {5.0, 4.0});
}

std::vector<Pen> region_pens(double width)
{
  return dashed(width, {8.0, 3.0, 1.5, 3.0});
}

void check_markers(const PlateView& view)
{
  for (const PlateRegion& region : view.regions)
  {
    const bool is_finite = std::all_of(region.outline.begin(), region.outline.end(),
                                       [](const Eigen::Vector2d& corner) { return corner.allFinite(); });
    if (region.outline.size() < 3 || !is_finite)
      throw InvalidInput(message("picture: region '", region.label, "' has ", region.outline.size(), " corners",
                                 is_finite ? "" : ", not all finite", "; give at least three finite ones"));
  }
  for (const MarkedPoint& point : view.points)
    if (!point.at.allFinite())
      throw InvalidInput(message("picture: the marked point '", point.label, "' lies at x = ", point.at[0],
                                 ", y = ", point.at[1], " m; give finite coordinates"));
}

void add_new(std::vector<std::string>& words, const std::string& word)
{
  if (std::find(words.begin(), words.end(), word) == words.end())
    words.push_back(word);
}

std::string joined(const std::vector<std::string>& words)
{
  std::string out;
  for (const std::string& word : words)
    out += (out.empty() ? "" : ", ") + word;
  return out;
}

} // namespace

PlateDrawing::PlateDrawing(const PlateView& view, int pieces)
    : surface_(refine(view.mesh, drawing_divisions(view.mesh, pieces))), points_(view.points)
{
  check_markers(view);
  edges_ = boundary_lines(surface_);
  for (const BarFootprint& bar : view.mesh.bars)
    for (Polyline& line : outline_of(surface_, bar.triangles))
      bars_.push_back(std::move(line));
  for (const PlateRegion& region : view.regions)
  {
    regions_.push_back({.points = region.outline, .closed = true});
    add_new(region_labels_, region.label);
  }
  for (const MarkedPoint& point : view.points)
    add_new(point_labels_, point.label);
  low_ = high_ = surface_.points.front();
  for (const Eigen::Vector2d& point : surface_.points)
  {
    low_ = low_.cwiseMin(point);
    high_ = high_.cwiseMax(point);
  }
}

Frame PlateDrawing::fit(const Eigen::Vector2d& corner, const Eigen::Vector2d& size) const
{
  return {.plate_centre = 0.5 * (low_ + high_),
          .page_centre = corner + 0.5 * size,
          .scale = std::min(size[0] / body_width(), size[1] / body_length())};
}

void PlateDrawing::fill(Canvas& canvas, const Frame& frame, const ContouredField& field, const ColourMap& map,
                        double low, double high) const
{
  const FieldRaster raster = rasterise(field, frame, canvas.pixels_per_unit());
  canvas.image(coloured(raster, map, low, high), raster.corner, on_page(frame, edges_));
}

void PlateDrawing::stroke(Canvas& canvas, const Frame& frame, const PlateStyle& style) const
{
  for (const Pen& pen : bar_pens(style.fine_width))
    canvas.stroke(on_page(frame, bars_), pen);
  for (const Pen& pen : region_pens(style.fine_width))
    canvas.stroke(on_page(frame, regions_), pen);
  canvas.stroke(on_page(frame, edges_), {.width = style.edge_width});
}

std::vector<Polyline> PlateDrawing::lines() const
{
  std::vector<Polyline> all = edges_;
  all.insert(all.end(), bars_.begin(), bars_.end());
  all.insert(all.end(), regions_.begin(), regions_.end());
  return all;
}

void PlateDrawing::draw_points(Canvas& canvas, const Frame& frame, const PlateStyle& style) const
{
  for (const MarkedPoint& point : points_)
  {
    const Eigen::Vector2d centre = frame.on_page(point.at);
    draw_point_sign(canvas, centre, style.point_radius);
    const PointLabel label = label_of(centre, frame, style.point_radius);
    if (style.label_points)
      canvas.text(label.anchor, point.label, label.style);
  }
}

std::vector<Polyline> PlateDrawing::taken_by_points(const Frame& frame, const PlateStyle& style) const
{
  std::vector<Polyline> boxes;
  for (const MarkedPoint& point : points_)
  {
    const Eigen::Vector2d centre = frame.on_page(point.at);
    const PointLabel label = label_of(centre, frame, style.point_radius);
    const double width = style.label_points ? text_width(point.label, label.style) : 0.0;
    const Eigen::Vector2d back(label.direction * style.point_radius, 0.0);
    boxes.push_back({.points = {centre - back, label.anchor + Eigen::Vector2d(label.direction * width, 0.0)}});
  }
  return boxes;
}

std::vector<LegendItem> PlateDrawing::legend_items(const PlateStyle& style) const
{
  constexpr double width = PlateStyle().fine_width;
  std::vector<LegendItem> items;
  if (!bars_.empty())
    items.push_back(line_item(bar_pens(width), "bass bar"));
  if (!regions_.empty())
    items.push_back(line_item(region_pens(width), joined(region_labels_)));
  if (!points_.empty())
    items.push_back(point_item(style.label_points ? points_.front().meaning
                                                  : points_.front().meaning + ": " + joined(point_labels_)));
  return items;
}

void draw_directions(Canvas& canvas, const PlateView& view, const Frame& frame, const Eigen::Vector2d& size)
{
  constexpr double quarter = 0.5 * std::numbers::pi;
  TextStyle style = aligned(note_text, Align::centre);
  canvas.text(frame.page_centre - Eigen::Vector2d(0.0, 0.5 * size[1] + 9.0), view.up, style);
  style.turn = -quarter;
  canvas.text(frame.page_centre - Eigen::Vector2d(0.5 * size[0] + 11.0, 0.0), view.left, style);
  style.turn = quarter;
  canvas.text(frame.page_centre + Eigen::Vector2d(0.5 * size[0] + 11.0, 0.0), view.right, style);
}

} // namespace plate
