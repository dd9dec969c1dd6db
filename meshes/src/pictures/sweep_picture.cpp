// SPDX-License-Identifier: MPL-2.0
#include "curve_style.h"
#include "label_stack.h"
#include "mode_drawing.h"
#include "plot_axes.h"
#include "sweep_layout.h"

#include <plate/core/error.h>
#include <plate/meshes/sweep_picture.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace plate
{

namespace
{

constexpr int thumbnail_pieces = 150; // fineness of the small pictures, see PlateDrawing
constexpr Pen plain_pen{.colour = {.red = 0.4, .green = 0.4, .blue = 0.4}, .width = 1.3};
constexpr double mass_width = 1.6; // of its curve

void check(const SweepCurves& sweep)
{
  if (sweep.values.size() < 2)
    throw InvalidInput(message("write_sweep_picture: there are ", sweep.values.size(), " values of ", sweep.key,
                               "; a curve needs at least two"));
  for (std::size_t i = 0; i < sweep.values.size(); ++i)
    if (!std::isfinite(sweep.values[i]) || (i > 0 && !(sweep.values[i] > sweep.values[i - 1])))
      throw InvalidInput(message("write_sweep_picture: value ", i + 1, " of ", sweep.key, " is ", sweep.values[i],
                                 "; values must be finite and ascending"));
  if (!sweep.mass.empty() && sweep.mass.size() != sweep.values.size())
    throw InvalidInput(message("write_sweep_picture: there are ", sweep.mass.size(), " masses for ",
                               sweep.values.size(), " values; give one each or none"));
  bool any = false;
  for (const SweepTrack& track : sweep.tracks)
  {
    if (track.frequency_hz.size() != sweep.values.size())
      throw InvalidInput(message("write_sweep_picture: track '", track.name, "' has ", track.frequency_hz.size(),
                                 " frequencies for ", sweep.values.size(), " values; give one each, NaN for none"));
    any = any ||
          std::any_of(track.frequency_hz.begin(), track.frequency_hz.end(), [](double f) { return std::isfinite(f); });
  }
  if (!any)
    throw InvalidInput("write_sweep_picture: no track has a frequency; nothing to draw");
}

/// First and last point of a track that has a frequency.
struct Ends
{
  std::size_t first = 0;
  std::size_t last = 0;
};

std::optional<Ends> ends_of(const SweepTrack& track)
{
  std::optional<Ends> ends;
  for (std::size_t i = 0; i < track.frequency_hz.size(); ++i)
    if (std::isfinite(track.frequency_hz[i]))
    {
      if (!ends)
        ends = Ends{.first = i, .last = i};
      ends->last = i;
    }
  return ends;
}

class SweepDrawing
{
public:
  SweepDrawing(const std::filesystem::path& path, const PlateView& view, const SweepCurves& sweep)
      : view_(view), sweep_(sweep), plate_(view, thumbnail_pieces),
        layout_(sweep_layout(sweep, plate_.body_width() / plate_.body_length())), canvas_(path, layout_.page)
  {
  }

  void draw()
  {
    canvas_.text({0.5 * canvas_.width(), 20.0}, shortened(sweep_.title, title_text, canvas_.width() - 36.0),
                 aligned(title_text, Align::centre));
    draw_axes();
    for (const bool emphasised : {false, true}) // the bold ones on top
      for (std::size_t t = 0; t < sweep_.tracks.size(); ++t)
        if (sweep_.tracks[t].emphasised == emphasised)
          draw_curve(t);
    draw_ends(Side::start);
    draw_ends(Side::end);
    if (!sweep_.mass.empty())
      draw_mass();
    canvas_.text({layout_.frame_right, canvas_.height() - 12.0},
                 "mode pictures: " + view_.up + " up, " + view_.left + " left", aligned(note_text, Align::right));
    canvas_.write();
  }

private:
  enum class Side
  {
    start,
    end
  };

  [[nodiscard]] Eigen::Vector2d point(std::size_t value, double frequency_hz) const
  {
    return {layout_.key.on_page(sweep_.values[value]), layout_.frequency.on_page(frequency_hz)};
  }

  [[nodiscard]] Pen pen_of(std::size_t track) const
  {
    if (!sweep_.tracks[track].emphasised)
      return plain_pen;
    const auto before = std::count_if(sweep_.tracks.begin(), sweep_.tracks.begin() + static_cast<std::ptrdiff_t>(track),
                                      [](const SweepTrack& t) { return t.emphasised; });
    return curve_pen(static_cast<std::size_t>(before));
  }

  [[nodiscard]] PlotFrame panel(const Axis& axis) const
  {
    return {.left = layout_.frame_left, .right = layout_.frame_right, .top = axis.page_high, .bottom = axis.page_low};
  }

  void draw_axes()
  {
    PlotFrame all = panel(layout_.frequency);
    all.bottom = layout_.bottom;
    draw_lower_axis(canvas_, all, round_marks(layout_.key, 6), sweep_.key);
    draw_upright_axis(canvas_, panel(layout_.frequency), round_marks(layout_.frequency, 8), "frequency, Hz");
  }

  void draw_curve(std::size_t track)
  {
    const SweepTrack& t = sweep_.tracks[track];
    const Pen pen = pen_of(track);
    std::vector<Polyline> parts(1);
    for (std::size_t i = 0; i < t.frequency_hz.size(); ++i)
      if (std::isfinite(t.frequency_hz[i]))
        parts.back().points.push_back(point(i, t.frequency_hz[i]));
      else
        parts.emplace_back(); // a gap where the mode was not found
    canvas_.stroke(parts, pen);
    for (const Polyline& part : parts)
      for (const Eigen::Vector2d& p : part.points)
        canvas_.dot(p, 0.6 + pen.width, pen.colour);
  }

  void draw_ends(Side side)
  {
    std::vector<std::size_t> shown;
    std::vector<double> wanted;
    for (std::size_t t = 0; t < sweep_.tracks.size(); ++t)
      if (ends_of(sweep_.tracks[t]))
      {
        shown.push_back(t);
        wanted.push_back(end_point(t, side)[1]);
      }
    const double height = layout_.picture[1];
    const double half = 0.5 * height + 2.0;
    const std::vector<double> places =
        stacked(wanted, height + 5.0, layout_.frequency.page_high + half, layout_.frequency.page_low - half);
    for (std::size_t i = 0; i < shown.size(); ++i)
      draw_end(shown[i], side, places[i]);
  }

  [[nodiscard]] Eigen::Vector2d end_point(std::size_t track, Side side) const
  {
    const SweepTrack& t = sweep_.tracks[track];
    const Ends ends = *ends_of(t);
    const std::size_t at = side == Side::start ? ends.first : ends.last;
    return point(at, t.frequency_hz[at]);
  }

  void draw_end(std::size_t track, Side side, double y)
  {
    const SweepTrack& t = sweep_.tracks[track];
    const bool at_start = side == Side::start;
    const double outward = at_start ? -1.0 : 1.0;
    const double curves_end = at_start ? layout_.key.page_low : layout_.key.page_high;
    const double near_side = curves_end + outward * layout_.leader;
    const double picture_left = at_start ? near_side - layout_.picture[0] : near_side;
    const Eigen::Vector2d end = end_point(track, side);
    const bool ends_inside = std::abs(end[0] - curves_end) > 1.0;
    const Polyline way{.points = {end, {curves_end + outward * 8.0, end[1]}, {near_side - outward * 3.0, y}}};
    canvas_.stroke(
        {&way, 1},
        {.colour = pen_of(track).colour, .width = 0.7, .dashes = {ends_inside ? 2.5 : 0.0, ends_inside ? 2.5 : 0.0}});

    const std::vector<double>& displacement = at_start ? t.first_shape : t.last_shape;
    if (!displacement.empty())
    {
      const Frame frame = plate_.fit({picture_left, y - 0.5 * layout_.picture[1]}, layout_.picture);
      draw_mode(canvas_, plate_, frame, picture_shape(view_.mesh, displacement), style_for_height(layout_.picture[1]));
    }
    write_end_label(track, side, y, at_start ? picture_left - 6.0 : picture_left + layout_.picture[0] + 8.0);
  }

  void write_end_label(std::size_t track, Side side, double y, double x)
  {
    const SweepTrack& t = sweep_.tracks[track];
    const Ends ends = *ends_of(t);
    if (side == Side::start)
    {
      canvas_.text({x, y}, hertz(t.frequency_hz[ends.first]), aligned(label_text, Align::right));
      return;
    }
    TextStyle style = t.emphasised ? strong_text : label_text;
    style.colour = t.emphasised ? pen_of(track).colour : black;
    canvas_.text({x, y - 7.0}, trade_name(t.name), style);
    canvas_.text({x, y + 7.0}, hertz(t.frequency_hz[ends.last]), label_text);
  }

  void draw_mass()
  {
    draw_upright_axis(canvas_, panel(layout_.mass), round_marks(layout_.mass, 3), "mass, g");
    const auto words = [](double mass) { return label_number(1000.0 * mass, 1) + " g"; };
    Polyline curve;
    for (std::size_t i = 0; i < sweep_.mass.size(); ++i)
      curve.points.emplace_back(layout_.key.on_page(sweep_.values[i]), layout_.mass.on_page(1000.0 * sweep_.mass[i]));
    canvas_.stroke({&curve, 1}, {.width = mass_width});
    for (const Eigen::Vector2d& p : curve.points)
      canvas_.dot(p, 0.6 + mass_width, black);
    const Eigen::Vector2d beside(8.0, 0.0);
    canvas_.text(curve.points.back() + beside, words(sweep_.mass.back()), label_text);
    canvas_.text(curve.points.front() - beside, words(sweep_.mass.front()), aligned(label_text, Align::right));
  }

  const PlateView& view_;
  const SweepCurves& sweep_;
  PlateDrawing plate_;
  SweepLayout layout_;
  Canvas canvas_;
};

} // namespace

void write_sweep_picture(const std::filesystem::path& path, const PlateView& view, const SweepCurves& sweep)
{
  check(sweep);
  SweepDrawing(path, view, sweep).draw();
}

} // namespace plate
