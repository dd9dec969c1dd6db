// SPDX-License-Identifier: MPL-2.0
#include "colour_map.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace plate
{

namespace
{

// White point D65 for the 2 degree observer, relative to Y = 1 (CIE 15).
constexpr std::array<double, 3> white_point = {0.95047, 1.0, 1.08883};
constexpr double knee = 6.0 / 29.0; // where the cube root of L*a*b* turns into a straight line

// Both laws as CIE 15 gives them.
double cube_root_law(double t)
{
  return t > knee * knee * knee ? std::cbrt(t) : t / (3.0 * knee * knee) + 4.0 / 29.0;
}
double cube_law(double f)
{
  return f > knee ? f * f * f : 3.0 * knee * knee * (f - 4.0 / 29.0);
}

double encode(double linear)
{
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1.0 / 2.4) - 0.055;
}
double decode(double stored)
{
  return stored <= 0.04045 ? stored / 12.92 : std::pow((stored + 0.055) / 1.055, 2.4);
}

double difference(const Lab& p, const Lab& q)
{
  return std::hypot(p.L - q.L, p.a - q.a, p.b - q.b);
}

Lab from_hue(double L, double chroma, double hue_degrees)
{
  const double hue = hue_degrees * std::numbers::pi / 180.0;
  return {.L = L, .a = chroma * std::cos(hue), .b = chroma * std::sin(hue)};
}

} // namespace

Colour to_srgb(const Lab& lab)
{
  const double fy = (lab.L + 16.0) / 116.0;
  const double X = white_point[0] * cube_law(fy + lab.a / 500.0);
  const double Y = white_point[1] * cube_law(fy);
  const double Z = white_point[2] * cube_law(fy - lab.b / 200.0);
  return {.red = encode(3.2404542 * X - 1.5371385 * Y - 0.4985314 * Z),
          .green = encode(-0.9692660 * X + 1.8760108 * Y + 0.0415560 * Z),
          .blue = encode(0.0556434 * X - 0.2040259 * Y + 1.0572252 * Z)};
}

Lab to_lab(const Colour& colour)
{
  const double r = decode(colour.red);
  const double g = decode(colour.green);
  const double b = decode(colour.blue);
  const double fx = cube_root_law((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / white_point[0]);
  const double fy = cube_root_law((0.2126729 * r + 0.7151522 * g + 0.0721750 * b) / white_point[1]);
  const double fz = cube_root_law((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / white_point[2]);
  return {.L = 116.0 * fy - 16.0, .a = 500.0 * (fx - fy), .b = 200.0 * (fy - fz)};
}

ColourMap::ColourMap(std::vector<Lab> knots) : knots_(std::move(knots)), arrival_(knots_.size(), 0.0)
{
  for (std::size_t i = 1; i < knots_.size(); ++i)
    arrival_[i] = arrival_[i - 1] + difference(knots_[i], knots_[i - 1]);
  for (double& arrival : arrival_)
    arrival /= arrival_.back();
}

Lab ColourMap::lab(double t) const
{
  t = std::clamp(t, 0.0, 1.0);
  std::size_t i = 1;
  while (i + 1 < knots_.size() && arrival_[i] < t)
    ++i;
  const double s = (t - arrival_[i - 1]) / (arrival_[i] - arrival_[i - 1]);
  const Lab& p = knots_[i - 1];
  const Lab& q = knots_[i];
  return {.L = p.L + s * (q.L - p.L), .a = p.a + s * (q.a - p.a), .b = p.b + s * (q.b - p.b)};
}

const ColourMap& displacement_map()
{
  static const ColourMap map({from_hue(31.0, 66.0, 295.0), {.L = 62.0}, from_hue(93.0, 66.0, 100.0)});
  return map;
}

const ColourMap& thickness_map()
{
  static const ColourMap map({{95.0, -1.0, 20.0}, {72.0, 15.0, 50.0}, {44.0, 28.0, 36.0}, {24.0, 16.0, 14.0}});
  return map;
}

const ColourMap& height_map()
{
  static const ColourMap map({{96.0, -2.0, 4.0}, {76.0, -18.0, -4.0}, {50.0, -20.0, -16.0}, {26.0, -3.0, -22.0}});
  return map;
}

const ColourMap& strength_map()
{
  static const ColourMap map({{96.0, 1.0, 6.0}, {78.0, 20.0, 26.0}, {52.0, 50.0, 22.0}, {26.0, 32.0, -4.0}});
  return map;
}

const std::vector<Colour>& curve_colours()
{
  // Blue, gold, plum, teal, brown, violet: neighbours in the list differ most in lightness.
  static const std::vector<Colour> colours = {
      to_srgb(from_hue(29.0, 52.0, 298.0)), to_srgb(from_hue(67.0, 60.0, 79.0)), to_srgb(from_hue(19.0, 39.0, 335.0)),
      to_srgb(from_hue(48.0, 33.0, 175.0)), to_srgb(from_hue(39.0, 60.0, 54.0)), to_srgb(from_hue(58.0, 46.0, 297.0))};
  return colours;
}

} // namespace plate
