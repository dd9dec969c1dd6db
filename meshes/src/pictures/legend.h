// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "canvas.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// A bar of colours with labels under chosen places.
struct ColourBar
{
  struct Tick
  {
    double at = 0.0;   ///< 0 left end to 1 right end [-]
    std::string label; ///< may be empty
  };
  std::vector<Colour> colours; ///< at equal distances from the left end to the right, at least two
  std::vector<Tick> ticks;
  std::string caption;
};

/// Colours of a part of a map, fine enough for a smooth bar.
[[nodiscard]] std::vector<Colour> bar_colours(const ColourMap& map);

/// One explanation: a sample of a line or mark, and what it means.
struct LegendItem
{
  std::string words;
  double width = 0.0;                                        ///< picture units
  std::function<void(Canvas&, const Eigen::Vector2d&)> draw; ///< from its left end, at half its height
};

/// All that stands below a picture: the colour bar and, beneath it, rows of explanations, each row centred.
struct Legend
{
  std::optional<ColourBar> bar;
  std::vector<LegendItem> items;

  /// Adds items whose words are not there yet.
  void add(const std::vector<LegendItem>& more);
  [[nodiscard]] double height(double width) const; ///< for a page of that width [picture units]
  void draw(Canvas& canvas, double top) const;     ///< over the width of the canvas
};

/// A short piece of a line and what it means.
[[nodiscard]] LegendItem line_item(const std::vector<Pen>& pens, const std::string& words);
/// The sign of a marked point and what it means.
[[nodiscard]] LegendItem point_item(const std::string& words);
/// A length of 50 mm (or another round one for large and small plates) at a scale in picture units per metre.
[[nodiscard]] LegendItem scale_item(double scale);
/// A remark.
[[nodiscard]] LegendItem note_item(const std::string& words);

/// The sign of a marked point: dark on light, so that it shows on any colour.
void draw_point_sign(Canvas& canvas, const Eigen::Vector2d& centre, double radius);

} // namespace plate
