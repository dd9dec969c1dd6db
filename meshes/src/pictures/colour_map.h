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
/// Our own constructions by published method [Kovesi2015]: uniform steps of colour difference, lightness rising or
/// falling steadily from end to end, so that a map reads in grey and for every kind of colour blindness; the one for
/// displacement is of his kind "linear-diverging", two hues of equal chroma meeting in a neutral of half the lightness.
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

[[nodiscard]] const ColourMap& displacement_map(); ///< dark blue (0, inward) by grey (0.5) to light yellow (1, outward)
[[nodiscard]] const ColourMap& thickness_map();    ///< straw (thin) to umber (thick)
[[nodiscard]] const ColourMap& height_map();       ///< near-white (low) by sea green to night blue (high)
[[nodiscard]] const ColourMap& strength_map();     ///< near-white (none used) by coral to dark plum (all used)

/// Colours of curves on white, told apart by lightness as well as hue.
[[nodiscard]] const std::vector<Colour>& curve_colours();

} // namespace plate
