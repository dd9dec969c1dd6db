// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <array>
#include <vector>

namespace plate
{

/// A colour of the screen, components 0 to 1 as stored (sRGB, gamma included).
struct Colour
{
  double red = 0.0;   ///< [-]
  double green = 0.0; ///< [-]
  double blue = 0.0;  ///< [-]
};

/// A colour as the eye measures it: CIE 1976 L*a*b*, white point D65.
struct Lab
{
  double L = 0.0; ///< lightness, 0 to 100 [-]
  double a = 0.0; ///< green to red [-]
  double b = 0.0; ///< blue to yellow [-]
};

/// Components outside 0 to 1 mean that no screen can show the colour.
/// @source IEC 61966-2-1 (sRGB) and CIE 15 (L*a*b*); pinned by tests/unit/pictures/colour_map_test.cpp
[[nodiscard]] Colour to_srgb(const Lab& lab);
[[nodiscard]] Lab to_lab(const Colour& colour);

/// Colours in equal perceptual steps: a polygon in L*a*b*, walked at constant speed.
///
/// Our own constructions by published method: uniform steps of colour difference with lightness carrying most of it
/// (P. Kovesi, Good Colour Maps: How to Design Them, arXiv:1509.03700, 2015); for the diverging map two hues of equal
/// lightness and chroma meeting in a neutral (K. Moreland, Diverging Color Maps for Scientific Visualization, ISVC
/// 2009). Blue against orange stays apart for the usual kinds of colour blindness, as they keep the b* axis.
class ColourMap
{
public:
  explicit ColourMap(std::vector<Lab> knots);

  /// Colour at t, 0 to 1 (clamped).
  [[nodiscard]] Lab lab(double t) const;
  [[nodiscard]] Colour colour(double t) const { return to_srgb(lab(t)); }

private:
  std::vector<Lab> knots_;
  std::vector<double> arrival_; ///< of each knot, 0 to 1 [-]
};

[[nodiscard]] const ColourMap& displacement_map(); ///< blue (0, inward) by near-white (0.5) to orange (1, outward)
[[nodiscard]] const ColourMap& thickness_map();    ///< straw (thin) to umber (thick)
[[nodiscard]] const ColourMap& height_map();       ///< near-white (low) by sea green to night blue (high)

/// Colours of equal lightness and chroma, hues far apart; the index wraps around.
[[nodiscard]] Colour track_colour(int index);

} // namespace plate
