// SPDX-License-Identifier: MPL-2.0
#include "legend.h"

#include <algorithm>

namespace plate
{

namespace
{

// Picture units.
constexpr double side_margin = 14.0;
constexpr double bar_height = 11.0;
constexpr double bar_block = 46.0; // bar, labels and caption
constexpr double widest_bar = 260.0;
constexpr double row_height = 17.0;
constexpr double between_items = 22.0;
constexpr double sample_width = 24.0;
constexpr double before_words = 6.0;
constexpr double point_radius = 3.5;

using Row = std::vector<const LegendItem*>;

double width_of(const Row& row)
{
  double sum = between_items * static_cast<double>(row.size() - 1);
  for (const LegendItem* item : row)
    sum += item->width;
  return sum;
}

/// Rows of items that fit into a width; an item wider than that has a row of its own.
std::vector<Row> rows_of(const std::vector<LegendItem>& items, double width)
{
  std::vector<Row> rows;
  for (const LegendItem& item : items)
  {
    if (rows.empty() || width_of(rows.back()) + between_items + item.width > width)
      rows.emplace_back();
    rows.back().push_back(&item);
  }
  return rows;
}

void draw_bar(Canvas& canvas, const ColourBar& bar, const Eigen::Vector2d& corner, double width)
{
  canvas.gradient(corner, {width, bar_height}, bar.colours);
  for (const ColourBar::Tick& tick : bar.ticks)
  {
    const Eigen::Vector2d foot = corner + Eigen::Vector2d(tick.at * width, bar_height);
    canvas.line(foot, foot + Eigen::Vector2d(0.0, 3.0), {.width = 0.8});
    canvas.text(foot + Eigen::Vector2d(0.0, 10.0), tick.label, aligned(label_text, Align::centre));
  }
  canvas.text(corner + Eigen::Vector2d(0.5 * width, bar_height + 23.0), bar.caption, aligned(note_text, Align::centre));
}

} // namespace

std::vector<Colour> bar_colours(const ColourMap& map)
{
  constexpr int stops = 33;
  std::vector<Colour> colours;
  colours.reserve(stops);
  for (int k = 0; k < stops; ++k)
    colours.push_back(map.colour(static_cast<double>(k) / (stops - 1)));
  return colours;
}

void Legend::add(const std::vector<LegendItem>& more)
{
  for (const LegendItem& item : more)
    if (std::none_of(items.begin(), items.end(), [&](const LegendItem& known) { return known.words == item.words; }))
      items.push_back(item);
}

double Legend::height(double width) const
{
  const double rows = static_cast<double>(rows_of(items, width - 2.0 * side_margin).size());
  return (bar ? bar_block : 0.0) + rows * row_height + 8.0;
}

void Legend::draw(Canvas& canvas, double top) const
{
  const double middle = 0.5 * canvas.width();
  if (bar)
  {
    const double width = std::min(widest_bar, canvas.width() - 4.0 * side_margin);
    draw_bar(canvas, *bar, {middle - 0.5 * width, top}, width);
  }
  double y = top + (bar ? bar_block : 0.0) + 0.5 * row_height;
  for (const Row& row : rows_of(items, canvas.width() - 2.0 * side_margin))
  {
    double x = middle - 0.5 * width_of(row);
    for (const LegendItem* item : row)
    {
      item->draw(canvas, {x, y});
      x += item->width + between_items;
    }
    y += row_height;
  }
}

LegendItem line_item(const std::vector<Pen>& pens, const std::string& words)
{
  return {.words = words,
          .width = sample_width + before_words + text_width(words, label_text),
          .draw = [pens, words](Canvas& canvas, const Eigen::Vector2d& start)
          {
            const Eigen::Vector2d end = start + Eigen::Vector2d(sample_width, 0.0);
            for (const Pen& pen : pens)
              canvas.line(start, end, pen);
            canvas.text(end + Eigen::Vector2d(before_words, 0.0), words, label_text);
          }};
}

LegendItem point_item(const std::string& words)
{
  return {.words = words,
          .width = 2.0 * point_radius + before_words + text_width(words, label_text),
          .draw = [words](Canvas& canvas, const Eigen::Vector2d& start)
          {
            draw_point_sign(canvas, start + Eigen::Vector2d(point_radius, 0.0), point_radius);
            canvas.text(start + Eigen::Vector2d(2.0 * point_radius + before_words, 0.0), words, label_text);
          }};
}

LegendItem scale_item(double scale)
{
  constexpr double longest = 80.0; // picture units
  double bar_length = 0.001;       // [m]
  for (const double candidate : {0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0})
    if (candidate * scale <= longest)
      bar_length = candidate;
  const double length = bar_length * scale;
  const std::string words = label_number(1000.0 * bar_length, 0) + " mm";
  return {.words = words,
          .width = length + before_words + text_width(words, label_text),
          .draw = [length, words](Canvas& canvas, const Eigen::Vector2d& start)
          {
            const Pen pen{.width = 1.2};
            const Eigen::Vector2d end = start + Eigen::Vector2d(length, 0.0);
            const Eigen::Vector2d tick(0.0, 3.0);
            canvas.line(start, end, pen);
            canvas.line(start - tick, start + tick, pen);
            canvas.line(end - tick, end + tick, pen);
            canvas.text(end + Eigen::Vector2d(before_words, 0.0), words, label_text);
          }};
}

LegendItem note_item(const std::string& words)
{
  return {.words = words,
          .width = text_width(words, note_text),
          .draw = [words](Canvas& canvas, const Eigen::Vector2d& start) { canvas.text(start, words, note_text); }};
}

void draw_point_sign(Canvas& canvas, const Eigen::Vector2d& centre, double radius)
{
  canvas.dot(centre, radius + 0.35 * radius, white);
  canvas.ring(centre, 0.85 * radius, {.width = 0.35 * radius});
  canvas.dot(centre, 0.35 * radius, black);
}

} // namespace plate
