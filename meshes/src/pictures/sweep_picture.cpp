// SPDX-License-Identifier: MPL-2.0
#include "axis.h"
#include "label_stack.h"
#include "mode_drawing.h"

#include <plate/core/error.h>
#include <plate/meshes/sweep_picture.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

namespace plate
{

namespace
{

// Picture units.
constexpr int thumbnail_pieces = 150; // fineness of the small pictures, see PlateDrawing
constexpr double left_margin = 58.0;
constexpr double right_margin = 18.0;
constexpr double title_height = 46.0;
constexpr double foot = 62.0;
constexpr double mass_height = 92.0;
constexpr double mass_gap = 20.0;
constexpr double curve_width = 400.0;
constexpr double leader = 26.0; // between the end of a curve and its picture
constexpr double label_width = 96.0;
constexpr double smallest_picture = 58.0;
constexpr double largest_picture = 84.0;

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
      : view_(view), sweep_(sweep), plate_(view, thumbnail_pieces), canvas_(path, layout())
  {
  }

  void draw()
  {
    canvas_.text({0.5 * canvas_.width(), 20.0}, sweep_.title, {.size = 14.0, .bold = true, .align = Align::centre});
    draw_grid();
    for (const bool emphasised : {false, true}) // the bold ones on top
      for (std::size_t t = 0; t < sweep_.tracks.size(); ++t)
        if (sweep_.tracks[t].emphasised == emphasised)
          draw_curve(t);
    draw_ends(Side::start);
    draw_ends(Side::end);
    if (!sweep_.mass.empty())
      draw_mass();
    draw_key_axis();
    canvas_.text({canvas_.width() - right_margin, canvas_.height() - 12.0},
                 "mode pictures: " + view_.up + " up, " + view_.left + " left",
                 {.size = 9.0, .colour = grey, .align = Align::right});
    canvas_.write();
  }

private:
  enum class Side
  {
    start,
    end
  };

  /// Fixes all sizes; returns that of the page. Room for one picture per track decides the height.
  Eigen::Vector2d layout()
  {
    const double count = static_cast<double>(std::max<std::size_t>(sweep_.tracks.size(), 1));
    const double panel = std::max(430.0, count * (smallest_picture + 5.0));
    picture_height_ = std::clamp(panel / count - 5.0, smallest_picture, largest_picture);
    picture_width_ = picture_height_ * plate_.body_width() / plate_.body_length();
    frame_left_ = left_margin;
    const double curves_left = frame_left_ + 8.0 + start_label_width + picture_width_ + leader;
    const double curves_right = curves_left + curve_width;
    frame_right_ = curves_right + leader + picture_width_ + label_width;
    x_ = {
        .low = sweep_.values.front(), .high = sweep_.values.back(), .page_low = curves_left, .page_high = curves_right};

    double low = 0.0;
    double high = 0.0;
    bool is_first = true;
    for (const SweepTrack& track : sweep_.tracks)
      for (const double f : track.frequency_hz)
        if (std::isfinite(f))
        {
          low = is_first ? f : std::min(low, f);
          high = is_first ? f : std::max(high, f);
          is_first = false;
        }
    const double range = std::max(high - low, 0.05 * high);
    // Half a picture of air above and below, but not below zero.
    const double air = 0.55 * picture_height_ / panel * range + 0.02 * range;
    y_ = {.low = std::max(0.0, low - air),
          .high = high + air,
          .page_low = title_height + panel,
          .page_high = title_height};
    const double height = title_height + panel + foot + (sweep_.mass.empty() ? 0.0 : mass_gap + mass_height);
    return {frame_right_ + right_margin, height};
  }

  Eigen::Vector2d point(std::size_t value, double frequency_hz) const
  {
    return {x_.on_page(sweep_.values[value]), y_.on_page(frequency_hz)};
  }

  Colour colour_of(std::size_t track) const
  {
    if (!sweep_.tracks[track].emphasised)
      return {.red = 0.45, .green = 0.45, .blue = 0.45};
    const auto before = std::count_if(sweep_.tracks.begin(), sweep_.tracks.begin() + static_cast<std::ptrdiff_t>(track),
                                      [](const SweepTrack& t) { return t.emphasised; });
    return track_colour(static_cast<int>(before));
  }

  void draw_grid()
  {
    const Ticks ticks = round_ticks(y_.low, y_.high, 8);
    for (const double value : ticks.values)
    {
      const double y = y_.on_page(value);
      canvas_.line({frame_left_, y}, {frame_right_, y}, {.colour = pale, .width = 0.6});
      canvas_.text({frame_left_ - 6.0, y}, label_number(value, ticks.decimals), {.size = 10.0, .align = Align::right});
    }
    canvas_.line({frame_left_, y_.page_low}, {frame_left_, y_.page_high}, {.width = 0.8});
    canvas_.line({frame_left_, y_.page_low}, {frame_right_, y_.page_low}, {.width = 0.8});
    canvas_.text({14.0, 0.5 * (y_.page_low + y_.page_high)}, "frequency, Hz",
                 {.size = 11.0, .align = Align::centre, .turn = -0.5 * std::numbers::pi});
    const double bottom = sweep_.mass.empty() ? y_.page_low : y_.page_low + mass_gap + mass_height;
    for (const double value : key_ticks().values)
      canvas_.line({x_.on_page(value), bottom}, {x_.on_page(value), y_.page_high}, {.colour = pale, .width = 0.6});
  }

  void draw_curve(std::size_t track)
  {
    const SweepTrack& t = sweep_.tracks[track];
    const double width = t.emphasised ? 2.4 : 1.1;
    std::vector<Polyline> parts(1);
    for (std::size_t i = 0; i < t.frequency_hz.size(); ++i)
      if (std::isfinite(t.frequency_hz[i]))
        parts.back().points.push_back(point(i, t.frequency_hz[i]));
      else
        parts.emplace_back(); // a gap where the mode was not found
    canvas_.stroke(parts, {.colour = colour_of(track), .width = width});
    for (const Polyline& part : parts)
      for (const Eigen::Vector2d& p : part.points)
        canvas_.dot(p, 0.6 + width, colour_of(track));
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
    const double half = 0.5 * picture_height_ + 2.0;
    const std::vector<double> places = stacked(wanted, picture_height_ + 5.0, y_.page_high + half, y_.page_low - half);
    for (std::size_t i = 0; i < shown.size(); ++i)
      draw_end(shown[i], side, places[i]);
  }

  Eigen::Vector2d end_point(std::size_t track, Side side) const
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
    const Eigen::Vector2d end = end_point(track, side);
    const double picture_left = at_start ? x_.page_low - leader - picture_width_ : x_.page_high + leader;
    const double picture_side = at_start ? picture_left + picture_width_ + 3.0 : picture_left - 3.0;
    const double knee = at_start ? x_.page_low - 8.0 : x_.page_high + 8.0;
    const bool ends_inside = std::abs(end[0] - (at_start ? x_.page_low : x_.page_high)) > 1.0;
    const Polyline way{.points = {end, {knee, end[1]}, {picture_side, y}}};
    canvas_.stroke({&way, 1}, {.colour = colour_of(track), .width = 0.7, .dash = ends_inside ? 2.5 : 0.0});

    const std::vector<double>& displacement = at_start ? t.first_shape : t.last_shape;
    if (!displacement.empty())
    {
      const Frame frame = plate_.fit({picture_left, y - 0.5 * picture_height_}, {picture_width_, picture_height_});
      draw_mode(canvas_, plate_, frame, picture_shape(view_.mesh, displacement), style_for_height(picture_height_));
    }
    write_end_label(track, side, y, at_start ? picture_left - 6.0 : picture_left + picture_width_ + 8.0);
  }

  void write_end_label(std::size_t track, Side side, double y, double x)
  {
    const SweepTrack& t = sweep_.tracks[track];
    const Ends ends = *ends_of(t);
    if (side == Side::start)
    {
      canvas_.text({x, y}, label_number(t.frequency_hz[ends.first], 1), {.size = 9.5, .align = Align::right});
      return;
    }
    const Colour colour = t.emphasised ? colour_of(track) : black;
    canvas_.text({x, y - 7.0}, t.name, {.size = 11.5, .colour = colour, .bold = t.emphasised});
    canvas_.text({x, y + 7.0}, label_number(t.frequency_hz[ends.last], 1) + " Hz", {.size = 9.5});
  }

  void draw_mass()
  {
    const auto [low, high] = std::minmax_element(sweep_.mass.begin(), sweep_.mass.end());
    const double top = y_.page_low + mass_gap;
    const double range = std::max(1000.0 * (*high - *low), 1.0); // [g]
    const Axis axis{.low = 1000.0 * *low - 0.12 * range,
                    .high = 1000.0 * *high + 0.12 * range,
                    .page_low = top + mass_height,
                    .page_high = top};
    const Ticks ticks = round_ticks(axis.low, axis.high, 3);
    for (const double value : ticks.values)
    {
      const double y = axis.on_page(value);
      canvas_.line({frame_left_, y}, {frame_right_, y}, {.colour = pale, .width = 0.6});
      canvas_.text({frame_left_ - 6.0, y}, label_number(value, ticks.decimals), {.size = 10.0, .align = Align::right});
    }
    canvas_.line({frame_left_, axis.page_low}, {frame_left_, axis.page_high}, {.width = 0.8});
    canvas_.text({14.0, top + 0.5 * mass_height}, "mass, g",
                 {.size = 11.0, .align = Align::centre, .turn = -0.5 * std::numbers::pi});
    Polyline curve;
    for (std::size_t i = 0; i < sweep_.mass.size(); ++i)
      curve.points.emplace_back(x_.on_page(sweep_.values[i]), axis.on_page(1000.0 * sweep_.mass[i]));
    canvas_.stroke({&curve, 1}, {.width = 1.6});
    for (const Eigen::Vector2d& p : curve.points)
      canvas_.dot(p, 2.2, black);
    const TextStyle style{.size = 9.5};
    canvas_.text(curve.points.back() + Eigen::Vector2d(8.0, 0.0), label_number(1000.0 * sweep_.mass.back(), 1) + " g",
                 style);
    canvas_.text(curve.points.front() - Eigen::Vector2d(8.0, 0.0), label_number(1000.0 * sweep_.mass.front(), 1),
                 {.size = 9.5, .align = Align::right});
  }

  Ticks key_ticks() const { return round_ticks(x_.low, x_.high, 6); }

  void draw_key_axis()
  {
    const double bottom = sweep_.mass.empty() ? y_.page_low : y_.page_low + mass_gap + mass_height;
    canvas_.line({frame_left_, bottom}, {frame_right_, bottom}, {.width = 0.8});
    const Ticks ticks = key_ticks();
    for (const double value : ticks.values)
    {
      const double x = x_.on_page(value);
      canvas_.line({x, bottom}, {x, bottom + 4.0}, {.width = 0.8});
      canvas_.text({x, bottom + 13.0}, label_number(value, ticks.decimals), {.size = 10.0, .align = Align::centre});
    }
    canvas_.text({0.5 * (x_.page_low + x_.page_high), bottom + 31.0}, sweep_.key,
                 {.size = 11.0, .align = Align::centre});
  }

  static constexpr double start_label_width = 44.0;

  const PlateView& view_;
  const SweepCurves& sweep_;
  PlateDrawing plate_;
  double picture_height_ = 0.0;
  double picture_width_ = 0.0;
  double frame_left_ = 0.0;
  double frame_right_ = 0.0;
  Axis x_;
  Axis y_;
  Canvas canvas_; // last: the layout must be known
};

} // namespace

void write_sweep_picture(const std::filesystem::path& path, const PlateView& view, const SweepCurves& sweep)
{
  check(sweep);
  SweepDrawing(path, view, sweep).draw();
}

} // namespace plate
