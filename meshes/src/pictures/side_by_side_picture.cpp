// SPDX-License-Identifier: MPL-2.0
#include "mode_drawing.h"
#include "sheet.h"

#include <plate/core/error.h>
#include <plate/meshes/side_by_side_picture.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

// Picture units, from the top of a cell.
constexpr double name_at = 8.0;
constexpr double difference_at = 22.0;
constexpr double hertz_at = 36.0;
constexpr double plate_at = 45.0;
constexpr double between_plates = 8.0;
constexpr double gap = 22.0;

void check(const DesignModes& design, std::size_t mode)
{
  if (mode >= design.modes.size())
    throw InvalidInput(message("write_side_by_side: a pair names mode ", mode + 1, " of '", design.view.title,
                               "', which has ", design.modes.size(), "; pair modes that are there"));
  const double frequency = design.modes[mode].frequency_hz;
  if (!(frequency > 0.0 && std::isfinite(frequency)))
    throw InvalidInput(message("write_side_by_side: mode ", mode + 1, " of '", design.view.title, "' has ", frequency,
                               " Hz; leave out modes without a positive frequency"));
}

std::string with_sign(double value, int decimals)
{
  const std::string digits = label_number(value, decimals);
  return value > 0.0 && digits != label_number(0.0, decimals) ? "+" + digits : digits;
}

std::string difference_words(double from_hz, double to_hz)
{
  const FrequencyDifference difference = frequency_difference(from_hz, to_hz);
  return with_sign(difference.percent, 1) + " %, " + with_sign(difference.cents, 0) + " cents";
}

std::string pair_words(const ModeShapePicture& first, const ModeShapePicture& second)
{
  if (!first.name.empty() && first.name == second.name)
    return trade_name(first.name);
  const std::string number = std::to_string(first.number);
  return first.number == second.number ? "mode " + number : "modes " + number + " and " + std::to_string(second.number);
}

/// "5 · 272.3 Hz", with a trade name that the other mode of the pair does not share.
std::string mode_line(const ModeShapePicture& mode, const ModeShapePicture& other)
{
  return (mode.name == other.name ? std::to_string(mode.number) : mode_words(mode)) + " \u00b7 " +
         hertz(mode.frequency_hz);
}

std::string design_line(const std::string& side, const DesignModes& design)
{
  return side + ": " + design.view.title + ", " + label_number(1000.0 * design.mass, 1) + " g";
}

/// One of the two designs, ready for drawing.
struct Side
{
  const DesignModes& design;
  PlateDrawing drawing;

  [[nodiscard]] std::vector<double> shape(std::size_t mode) const
  {
    return picture_shape(design.view.mesh, design.modes[mode].normal_displacement);
  }
};

/// Sum of the products of two shapes over the places that both plates cover when laid on each other.
double likeness(const Side& a, const std::vector<double>& shape_a, const Side& b, const std::vector<double>& shape_b)
{
  constexpr double height = 60.0; // picture units; enough to tell a shape from its opposite
  const double longer = std::max(a.drawing.body_length(), b.drawing.body_length());
  const auto raster = [&](const Side& side, const std::vector<double>& shape)
  {
    Frame frame = side.drawing.fit({-0.5 * height, -0.5 * height}, {height, height});
    frame.scale = height / longer;
    return rasterise(ContouredField(side.drawing.surface(), shape), frame, 1.0);
  };
  const FieldRaster on_a = raster(a, shape_a);
  const FieldRaster on_b = raster(b, shape_b);
  const Eigen::Vector2i shift = (on_a.corner - on_b.corner).cast<int>();
  double sum = 0.0;
  for (int row = std::max(0, -shift[1]); row < std::min(on_a.height, on_b.height - shift[1]); ++row)
    for (int column = std::max(0, -shift[0]); column < std::min(on_a.width, on_b.width - shift[0]); ++column)
    {
      const double product = on_a.values[static_cast<std::size_t>(row * on_a.width + column)] *
                             on_b.values[static_cast<std::size_t>((row + shift[1]) * on_b.width + column + shift[0])];
      sum += std::isnan(product) ? 0.0 : product;
    }
  return sum;
}

class SideBySide
{
public:
  SideBySide(const DesignModes& first, const DesignModes& second, std::span<const ModePair> pairs)
      : first_{first, PlateDrawing(first.view, sheet_pieces)}, second_{second, PlateDrawing(second.view, sheet_pieces)},
        pairs_(pairs), length_(std::max(first_.drawing.body_length(), second_.drawing.body_length()))
  {
    const double width = std::max(first_.drawing.body_width(), second_.drawing.body_width());
    grid_ = fit_grid(pairs.size(), {.plates = 2.0,
                                    .aspect = width / length_,
                                    .around = {between_plates + gap, plate_at + gap},
                                    .least_width = least_cell_width()});
  }

  void write(const std::filesystem::path& path)
  {
    const ModeStyle style = style_for_height(grid_.plate[1]);
    Sheet sheet{.title = "Two designs side by side",
                .lines = {design_line("left", first_.design), design_line("right", second_.design) + mass_change()},
                .legend = mode_legend(first_.drawing, style)};
    sheet.legend.add(second_.drawing.legend_items(style.plate));
    sheet.legend.add({scale_item(grid_.plate[1] / length_), directions_item(first_.design.view)});
    write_sheet(path, sheet, grid_, pairs_.size(),
                [&](Canvas& canvas, std::size_t i, const Eigen::Vector2d& corner) { draw_cell(canvas, i, corner); });
  }

private:
  [[nodiscard]] const ModeShapePicture& first(std::size_t pair) const
  {
    return first_.design.modes[pairs_[pair].first];
  }
  [[nodiscard]] const ModeShapePicture& second(std::size_t pair) const
  {
    return second_.design.modes[pairs_[pair].second];
  }

  [[nodiscard]] std::string mass_change() const
  {
    if (!(first_.design.mass > 0.0))
      return {};
    return " (" + with_sign(100.0 * (second_.design.mass / first_.design.mass - 1.0), 1) + " %)";
  }

  [[nodiscard]] double least_cell_width() const
  {
    double widest = 0.0;
    for (std::size_t i = 0; i < pairs_.size(); ++i)
      for (const std::string& words : {mode_line(first(i), second(i)), mode_line(second(i), first(i))})
        widest = std::max(widest, 2.0 * (text_width(words, cell_number_style) + between_plates));
    return widest;
  }

  void draw_cell(Canvas& canvas, std::size_t i, const Eigen::Vector2d& corner) const
  {
    const double middle = corner[0] + 0.5 * grid_.cell[0];
    canvas.text({middle, corner[1] + name_at}, pair_words(first(i), second(i)), cell_name_style);
    canvas.text({middle, corner[1] + difference_at}, difference_words(first(i).frequency_hz, second(i).frequency_hz),
                cell_number_style);
    const std::vector<double> shape = first_.shape(pairs_[i].first);
    std::vector<double> other = second_.shape(pairs_[i].second);
    if (likeness(first_, shape, second_, other) < 0.0)
      for (double& value : other)
        value = -value;
    const double aside = std::max(0.5 * (grid_.plate[0] + between_plates), 0.25 * (grid_.cell[0] - gap));
    draw_side(canvas, first_, shape, {middle - aside, corner[1]}, mode_line(first(i), second(i)));
    draw_side(canvas, second_, other, {middle + aside, corner[1]}, mode_line(second(i), first(i)));
  }

  void draw_side(Canvas& canvas, const Side& side, const std::vector<double>& shape, const Eigen::Vector2d& top,
                 const std::string& words) const
  {
    canvas.text(top + Eigen::Vector2d(0.0, hertz_at), words, cell_number_style);
    Frame frame = side.drawing.fit(top + Eigen::Vector2d(-0.5 * grid_.plate[0], plate_at), grid_.plate);
    frame.scale = grid_.plate[1] / length_;
    draw_mode(canvas, side.drawing, frame, shape, style_for_height(grid_.plate[1]));
  }

  Side first_;
  Side second_;
  std::span<const ModePair> pairs_;
  double length_; ///< of the longer plate [m]
  SheetGrid grid_;
};

} // namespace

FrequencyDifference frequency_difference(double from_hz, double to_hz)
{
  constexpr double cents_per_octave = 1200.0;
  return {.percent = 100.0 * (to_hz / from_hz - 1.0), .cents = cents_per_octave * std::log2(to_hz / from_hz)};
}

void write_side_by_side(const std::filesystem::path& path, const DesignModes& first, const DesignModes& second,
                        std::span<const ModePair> pairs)
{
  if (pairs.empty())
    throw InvalidInput("write_side_by_side: there are no pairs of modes; give at least one");
  for (const ModePair& pair : pairs)
  {
    check(first, pair.first);
    check(second, pair.second);
  }
  SideBySide(first, second, pairs).write(path);
}

} // namespace plate
