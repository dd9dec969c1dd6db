// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "colour_map.h"

#include <string>
#include <string_view>

namespace plate
{

inline constexpr Colour black{.red = 0.0, .green = 0.0, .blue = 0.0};
inline constexpr Colour white{.red = 1.0, .green = 1.0, .blue = 1.0};
inline constexpr Colour grey{.red = 0.35, .green = 0.35, .blue = 0.35};
inline constexpr Colour pale{.red = 0.85, .green = 0.85, .blue = 0.85};

enum class Align
{
  left,
  centre,
  right
};

/// How text is set; the anchor is at the alignment's end, halfway up a capital letter.
struct TextStyle
{
  double size = 10.0; ///< of the font, picture units
  Colour colour = black;
  bool bold = false;
  Align align = Align::left;
  double turn = 0.0; ///< clockwise on the page [rad]
  bool halo = false; ///< a white rim, for text on colours
};

inline constexpr double capital_height = 0.73; ///< of the font size; close enough for sans-serif fonts

/// Part of the width that lies to the left of the anchor.
[[nodiscard]] constexpr double part_before_anchor(Align align)
{
  return align == Align::left ? 0.0 : align == Align::centre ? 0.5 : 1.0;
}

/// Black or white, whichever is read on a colour.
[[nodiscard]] Colour readable_on(const Colour& colour);

/// Width of words without a page, for layouts that must be known before there is one [picture units].
[[nodiscard]] double text_width(std::string_view words, const TextStyle& style);

/// Words cut to a width, with an ellipsis where they were cut.
[[nodiscard]] std::string shortened(std::string_view words, const TextStyle& style, double width);

/// A number with fixed decimals and a true minus sign.
[[nodiscard]] std::string label_number(double value, int decimals);

// The few styles that all pictures share.
inline constexpr TextStyle note_text{.size = 9.0, .colour = grey};    ///< directions, captions, remarks
inline constexpr TextStyle label_text{.size = 9.5};                   ///< axes, legends, numbers
inline constexpr TextStyle strong_text{.size = 10.5, .bold = true};   ///< names
inline constexpr TextStyle title_text{.size = 14.0, .bold = true};    ///< of a sheet
inline constexpr TextStyle headline_text{.size = 18.0, .bold = true}; ///< of a single plate, read at thumbnail size

/// The same style with another alignment.
[[nodiscard]] constexpr TextStyle aligned(TextStyle style, Align align)
{
  style.align = align;
  return style;
}

} // namespace plate
