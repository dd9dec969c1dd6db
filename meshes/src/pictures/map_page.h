// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "plate_page.h"

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// Lines where another field is zero, drawn over a map.
struct ZeroLines
{
  std::vector<double> values; ///< (num_nodes)
  std::string words;          ///< in the legend
};

/// A nodal field with all that its map says, in the unit it is shown in.
struct MapContent
{
  std::vector<double> values; ///< (num_nodes)
  std::string headline;
  std::string remark;       ///< beneath it
  std::string caption;      ///< under the legend
  double step = 1.0;        ///< between contours
  int index_every = 5;      ///< each so many steps a bold contour
  int decimals = 0;         ///< of labels
  double least_range = 0.0; ///< a smaller one is drawn as one colour
  bool about_zero = false;  ///< colours reach as far below zero as above
  std::optional<ZeroLines> zero = {};
};

/// Least and greatest value of a field, or of all on a page.
struct FieldRange
{
  double lowest;
  double highest;
};

[[nodiscard]] FieldRange range_of(const ContouredField& field);

/// Explains the colours of a map.
[[nodiscard]] ColourBar colour_bar(const FieldRange& field, const MapContent& map, const ColourMap& colours);

/// Draws a plate with a field in colours and labelled contours, its lines and marks.
///
/// @param all  of the fields that share the colours
void draw_map(Canvas& canvas, const PlateDrawing& drawing, const Frame& frame, const ContouredField& field,
              const MapContent& map, const ColourMap& colours, const FieldRange& all);

/// Writes a page with the field in colours and labelled contours.
void write_map(const std::filesystem::path& path, const PlateView& view, const MapContent& map,
               const ColourMap& colours);

/// A step of 1, 2 or 5 times a power of ten, at least `finest`, itself such a power, that gives at most `most`
/// contours.
[[nodiscard]] double contour_step(double range, double finest, int most);

/// Decimals that labels at multiples of a step need.
[[nodiscard]] int decimals_for(double step);

} // namespace plate
