// SPDX-License-Identifier: MPL-2.0
#include "legend.h"

#include <plate/core/error.h>
#include <plate/meshes/mac_picture.h>

#include <algorithm>
#include <numbers>

namespace plate
{

namespace
{

// Picture units.
const Eigen::Vector2d cell(30.0, 22.0);
constexpr double title_at = 20.0;
constexpr double caption_space = 24.0; // for what rows and columns are
constexpr double edge = 18.0;
constexpr double least_width = 360.0; // for title and legend
constexpr double least_shown = 0.1;   // value in a field; less is told from zero by colour only

void check(const MacPicture& picture)
{
  const Eigen::MatrixXd& values = picture.values;
  if (values.size() == 0)
    throw InvalidInput("write_mac_picture: there are no values; give at least one row and one column");
  if (!(values.array() >= 0.0 && values.array() <= 1.0 + 1e-9).all()) // negated: also catches NaN
    throw InvalidInput(message("write_mac_picture: values lie between ", values.minCoeff(), " and ", values.maxCoeff(),
                               "; they must be from 0 to 1"));
  const auto fits = [](const std::vector<std::string>& labels, Eigen::Index count)
  { return static_cast<Eigen::Index>(labels.size()) == count; };
  if (!fits(picture.row_labels, values.rows()) || !fits(picture.column_labels, values.cols()))
    throw InvalidInput(message("write_mac_picture: there are ", picture.row_labels.size(), " and ",
                               picture.column_labels.size(), " labels for ", values.rows(), " rows and ", values.cols(),
                               " columns; give one each"));
  for (const ModePair& pair : picture.pairs)
    if (pair.first >= picture.row_labels.size() || pair.second >= picture.column_labels.size())
      throw InvalidInput(message("write_mac_picture: the pair of row ", pair.first, " and column ", pair.second,
                                 " is not among ", values.rows(), " rows and ", values.cols(), " columns"));
}

double widest(const std::vector<std::string>& labels)
{
  double width = 0.0;
  for (const std::string& label : labels)
    width = std::max(width, text_width(label, label_text));
  return width;
}

class MacDrawing
{
public:
  explicit MacDrawing(const MacPicture& picture) : picture_(picture)
  {
    const Eigen::Array2d counts(static_cast<double>(picture.values.cols()), static_cast<double>(picture.values.rows()));
    size_ = (cell.array() * counts).matrix();
    const double labels = edge + caption_space + widest(picture.row_labels) + 8.0;
    width_ = std::max(labels + size_.x() + edge, least_width);
    corner_ = {labels + 0.5 * (width_ - labels - size_.x() - edge),
               title_at + 16.0 + caption_space + widest(picture.column_labels) + 8.0};
    legend_.bar = ColourBar{.colours = bar_colours(height_map()), .ticks = {}, .caption = "modal assurance criterion"};
    for (const double tick : {0.0, 0.25, 0.5, 0.75, 1.0})
      legend_.bar->ticks.push_back({.at = tick, .label = label_number(tick, 2)});
    if (!picture.pairs.empty())
      legend_.items.push_back(line_item({frame_pen}, "modes paired with each other"));
  }

  void write(const std::filesystem::path& path) const
  {
    const double legend_at = corner_.y() + size_.y() + 22.0;
    Canvas canvas(path, {width_, legend_at + legend_.height(width_)});
    canvas.text({0.5 * width_, title_at}, "Likeness of modes", aligned(title_text, Align::centre));
    for (Eigen::Index row = 0; row < picture_.values.rows(); ++row)
      for (Eigen::Index column = 0; column < picture_.values.cols(); ++column)
        draw_field(canvas, row, column);
    draw_labels(canvas);
    for (const ModePair& pair : picture_.pairs)
      draw_frame(canvas, corner_of(pair.first, pair.second));
    legend_.draw(canvas, legend_at);
    canvas.write();
  }

private:
  static constexpr Pen frame_pen{.colour = {.red = 0.85, .green = 0.33, .blue = 0.0}, .width = 2.2};

  template <class Index>
  [[nodiscard]] Eigen::Vector2d corner_of(Index row, Index column) const
  {
    return corner_ + (cell.array() * Eigen::Array2d(static_cast<double>(column), static_cast<double>(row))).matrix();
  }

  void draw_field(Canvas& canvas, Eigen::Index row, Eigen::Index column) const
  {
    const double value = picture_.values(row, column);
    const Colour colour = height_map().colour(value);
    const Eigen::Vector2d corner = corner_of(row, column);
    const Eigen::Vector2d seam(0.5, 0.5);
    canvas.rectangle(corner + seam, cell - 2.0 * seam, colour);
    if (value < least_shown)
      return;
    TextStyle style = aligned(note_text, Align::centre);
    style.colour = readable_on(colour);
    canvas.text(corner + 0.5 * cell, label_number(value, 2), style);
  }

  void draw_labels(Canvas& canvas) const
  {
    const TextStyle right = aligned(label_text, Align::right);
    TextStyle upright = label_text;
    upright.turn = -0.5 * std::numbers::pi;
    for (std::size_t row = 0; row < picture_.row_labels.size(); ++row)
      canvas.text(corner_of(row, std::size_t{0}) + Eigen::Vector2d(-8.0, 0.5 * cell.y()), picture_.row_labels[row],
                  right);
    for (std::size_t column = 0; column < picture_.column_labels.size(); ++column)
      canvas.text(corner_of(std::size_t{0}, column) + Eigen::Vector2d(0.5 * cell.x(), -8.0),
                  picture_.column_labels[column], upright);
    TextStyle caption = aligned(strong_text, Align::centre);
    canvas.text({corner_.x() + 0.5 * size_.x(), title_at + 26.0},
                shortened(picture_.columns, caption, std::max(size_.x(), 0.8 * width_)), caption);
    const double top = title_at + 40.0; // beside fields and labels of columns
    const double bottom = corner_.y() + size_.y();
    caption.turn = upright.turn;
    canvas.text({edge, 0.5 * (top + bottom)}, shortened(picture_.rows, caption, bottom - top), caption);
  }

  static void draw_frame(Canvas& canvas, const Eigen::Vector2d& corner)
  {
    Polyline frame{.points = {}, .closed = true};
    for (const auto& [x, y] : {std::pair(0.0, 0.0), std::pair(1.0, 0.0), std::pair(1.0, 1.0), std::pair(0.0, 1.0)})
      frame.points.emplace_back(corner + Eigen::Vector2d(x * cell.x(), y * cell.y()));
    canvas.stroke({&frame, 1}, frame_pen);
  }

  const MacPicture& picture_;
  Eigen::Vector2d size_;   ///< of all fields
  Eigen::Vector2d corner_; ///< of the first field
  double width_;
  Legend legend_;
};

} // namespace

void write_mac_picture(const std::filesystem::path& path, const MacPicture& picture)
{
  check(picture);
  MacDrawing(picture).write(path);
}

} // namespace plate
