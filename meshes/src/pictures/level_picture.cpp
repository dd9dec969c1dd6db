// SPDX-License-Identifier: MPL-2.0
#include "curve_style.h"
#include "legend.h"
#include "plot_axes.h"

#include <plate/core/error.h>
#include <plate/meshes/level_picture.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

namespace plate
{

namespace
{

// Picture units.
constexpr double page_width = 720.0;
constexpr double title_at = 20.0;
constexpr double marks_at = 58.0; // of the lower row of labels
constexpr double row_height = 13.0;
constexpr PlotFrame frame = {.left = 62.0, .right = page_width - 18.0, .top = 68.0, .bottom = 388.0};
constexpr double legend_at = frame.bottom + 46.0;

void check(const LevelPicture& picture)
{
  const std::vector<double>& f = picture.frequency_hz;
  if (f.size() < 2 || !(f.front() > 0.0) || std::adjacent_find(f.begin(), f.end(), std::greater_equal<>()) != f.end())
    throw InvalidInput(message("write_level_picture: there are ", f.size(),
                               " frequencies; give at least two, positive and ascending"));
  if (picture.curves.empty() || picture.curves.size() > num_curve_pens)
    throw InvalidInput(
        message("write_level_picture: there are ", picture.curves.size(), " curves; give 1 to ", num_curve_pens));
  for (const LevelCurve& curve : picture.curves)
    if (curve.levels.size() != f.size() ||
        !std::all_of(curve.levels.begin(), curve.levels.end(), [](double level) { return std::isfinite(level); }))
      throw InvalidInput(message("write_level_picture: curve '", curve.label, "' has ", curve.levels.size(),
                                 " levels for ", f.size(), " frequencies; give one each, finite"));
}

Axis level_axis(const LevelPicture& picture)
{
  constexpr double step = 10.0; // [dB]
  double low = picture.curves.front().levels.front();
  double high = low;
  for (const LevelCurve& curve : picture.curves)
    for (const double level : curve.levels)
    {
      low = std::min(low, level);
      high = std::max(high, level);
    }
  return {.low = step * std::floor(low / step),
          .high = step * std::floor(high / step) + step,
          .page_low = frame.bottom,
          .page_high = frame.top};
}

/// 1, 2 and 5 times powers of ten between two values.
std::vector<double> log_ticks(double low, double high)
{
  std::vector<double> ticks;
  for (double power = std::pow(10.0, std::floor(std::log10(low))); power <= high; power *= 10.0)
    for (const double lead : {1.0, 2.0, 5.0})
      if (lead * power >= low * (1.0 - 1e-9) && lead * power <= high * (1.0 + 1e-9))
        ticks.push_back(lead * power);
  return ticks;
}

class LevelDrawing
{
public:
  LevelDrawing(const std::filesystem::path& path, const LevelPicture& picture)
      : picture_(picture), frequency_{.low = std::log(picture.frequency_hz.front()),
                                      .high = std::log(picture.frequency_hz.back()),
                                      .page_low = frame.left,
                                      .page_high = frame.right},
        level_(level_axis(picture)), legend_(legend_of(picture)),
        canvas_(path, {page_width, legend_at + legend_.height(page_width)})
  {
  }

  void draw()
  {
    canvas_.text({0.5 * page_width, title_at}, shortened(picture_.title, title_text, page_width - 28.0),
                 aligned(title_text, Align::centre));
    draw_axes();
    draw_marks();
    for (std::size_t i = 0; i < picture_.curves.size(); ++i)
      draw_curve(picture_.curves[i], curve_pen(i));
    legend_.draw(canvas_, legend_at);
    canvas_.write();
  }

private:
  [[nodiscard]] static Legend legend_of(const LevelPicture& picture)
  {
    Legend legend;
    for (std::size_t i = 0; i < picture.curves.size(); ++i)
      legend.items.push_back(line_item({curve_pen(i)}, picture.curves[i].label));
    for (const std::string& note : picture.notes)
      legend.items.push_back(note_item(note));
    return legend;
  }

  [[nodiscard]] double across(double frequency_hz) const { return frequency_.on_page(std::log(frequency_hz)); }

  void draw_axes()
  {
    std::vector<AxisMark> frequencies;
    for (const double value : log_ticks(picture_.frequency_hz.front(), picture_.frequency_hz.back()))
      frequencies.push_back({.at = across(value), .words = label_number(value, 0)});
    draw_lower_axis(canvas_, frame, frequencies, "frequency, Hz");
    draw_upright_axis(canvas_, frame, round_marks(level_, 8), picture_.quantity);
  }

  void draw_marks()
  {
    std::array<double, 2> free_from = {frame.left, frame.left}; // of each row of labels
    for (const MarkedFrequency& mark : picture_.marks)
    {
      if (mark.frequency_hz < picture_.frequency_hz.front() || mark.frequency_hz > picture_.frequency_hz.back())
        continue;
      const double x = across(mark.frequency_hz);
      canvas_.line({x, frame.bottom}, {x, frame.top}, {.colour = grey, .width = 0.8, .dashes = {3.0, 3.0}});
      const double half = 0.5 * text_width(mark.label, label_text) + 2.0;
      const auto row = std::find_if(free_from.begin(), free_from.end(), [&](double from) { return x - half >= from; });
      if (row == free_from.end())
        continue; // no room for the words; the line stays
      canvas_.text({x, marks_at - row_height * static_cast<double>(row - free_from.begin())}, mark.label,
                   aligned(label_text, Align::centre));
      *row = x + half;
    }
  }

  void draw_curve(const LevelCurve& curve, const Pen& pen)
  {
    Polyline line;
    for (std::size_t i = 0; i < curve.levels.size(); ++i)
      line.points.emplace_back(across(picture_.frequency_hz[i]), level_.on_page(curve.levels[i]));
    canvas_.stroke({&line, 1}, pen);
  }

  const LevelPicture& picture_;
  Axis frequency_; ///< of the logarithm
  Axis level_;
  Legend legend_;
  Canvas canvas_;
};

} // namespace

void write_level_picture(const std::filesystem::path& path, const LevelPicture& picture)
{
  check(picture);
  LevelDrawing(path, picture).draw();
}

} // namespace plate
