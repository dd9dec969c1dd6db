// SPDX-License-Identifier: MPL-2.0
#include "contour_labels.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <utility>

namespace plate
{

namespace
{

// Picture units.
constexpr double text_size = 8.5;
constexpr double step = 3.0;                   // distance of the points a line is walked in
constexpr double clearance = 0.62 * text_size; // of a label's middle line from other lines
constexpr double enough = 2.0 * clearance;     // more distance than this is no better
constexpr double between_labels = 34.0;

struct Place
{
  std::size_t first = 0; ///< of the walked points covered by the label
  std::size_t last = 0;
  double merit = 0.0;
};

class LabelPlacer
{
public:
  LabelPlacer(const std::vector<LabelledContour>& contours, const std::vector<Polyline>& edges)
  {
    for (std::size_t level = 0; level < contours.size(); ++level)
      for (const Polyline& line : contours[level].lines)
        remember(line, static_cast<int>(level));
    for (const Polyline& edge : edges)
      remember(edge, edge_level);
  }

  /// The best place for a label of a width on a walked line of a level, if there is any.
  std::optional<Place> best_place(const std::vector<Eigen::Vector2d>& points, double width, int level) const
  {
    const auto covered = static_cast<std::size_t>(std::ceil((width + 5.0) / step));
    if (points.size() < 2 * covered)
      return std::nullopt;
    std::optional<Place> best;
    for (std::size_t first = 0; first + covered < points.size(); ++first)
    {
      const double merit = merit_of(points, first, first + covered, level);
      if (merit > 0.0 && (!best || merit > best->merit))
        best = Place{.first = first, .last = first + covered, .merit = merit};
    }
    return best;
  }

  void occupy(const Eigen::Vector2d& middle) { labels_.push_back(middle); }

private:
  static constexpr int edge_level = -1;
  struct Obstacle
  {
    Eigen::Vector2d place;
    int level = 0;
  };

  void remember(const Polyline& line, int level)
  {
    for (const Eigen::Vector2d& point : walked(line, step))
      obstacles_.push_back({.place = point, .level = level});
  }

  /// Positive where a label may stand, larger where it stands better.
  double merit_of(const std::vector<Eigen::Vector2d>& points, std::size_t first, std::size_t last, int level) const
  {
    const Eigen::Vector2d a = points[first];
    const Eigen::Vector2d b = points[last];
    const Eigen::Vector2d middle = 0.5 * (a + b);
    for (const Eigen::Vector2d& label : labels_)
      if ((label - middle).norm() < between_labels)
        return 0.0;
    const double straightness = (b - a).norm() / (step * static_cast<double>(last - first));
    if (straightness < 0.93)
      return 0.0;
    double room = enough;
    for (const Obstacle& obstacle : obstacles_)
      if (obstacle.level != level)
        for (const double t : {0.0, 0.5, 1.0})
          room = std::min(room, (a + t * (b - a) - obstacle.place).norm());
    if (room < clearance)
      return 0.0;
    const double levelness = std::abs((b - a)[0]) / (b - a).norm(); // text across the page reads best
    return room / enough + straightness + 0.5 * levelness;
  }

  std::vector<Obstacle> obstacles_;
  std::vector<Eigen::Vector2d> labels_;
};

void write_label(Canvas& canvas, const LabelledContour& contour, const Eigen::Vector2d& a, const Eigen::Vector2d& b)
{
  double turn = std::atan2(b[1] - a[1], b[0] - a[0]);
  if (std::abs(turn) > 0.5 * std::numbers::pi) // never upside down
    turn -= std::copysign(std::numbers::pi, turn);
  canvas.text(0.5 * (a + b), contour.label,
              {.size = text_size, .colour = contour.text_colour, .align = Align::centre, .turn = turn});
}

} // namespace

void draw_labelled_contours(Canvas& canvas, const std::vector<LabelledContour>& contours,
                            const std::vector<Polyline>& edges)
{
  LabelPlacer placer(contours, edges);
  for (const bool index_lines : {true, false})
    for (std::size_t level = 0; level < contours.size(); ++level)
    {
      const LabelledContour& contour = contours[level];
      if (contour.is_index != index_lines)
        continue;
      const double width = text_width(contour.label, {.size = text_size});
      std::vector<Polyline> drawn;
      for (const Polyline& line : contour.lines)
      {
        const std::vector<Eigen::Vector2d> points = walked(line, step);
        const std::optional<Place> place = placer.best_place(points, width, static_cast<int>(level));
        if (!place)
        {
          drawn.push_back(line);
          continue;
        }
        const auto at = [&](std::size_t i) { return points.begin() + static_cast<std::ptrdiff_t>(i); };
        Polyline before{.points = {points.begin(), at(place->first + 1)}};
        Polyline after{.points = {at(place->last), points.end()}};
        if (line.closed) // one piece that runs from the label around to the label
          after.points.insert(after.points.end(), before.points.begin(), before.points.end());
        else
        {
          after.points.push_back(line.points.back());
          drawn.push_back(std::move(before));
        }
        drawn.push_back(std::move(after));
        placer.occupy(0.5 * (points[place->first] + points[place->last]));
        write_label(canvas, contour, points[place->first], points[place->last]);
      }
      canvas.stroke(drawn, contour.pen);
    }
}

} // namespace plate
