// SPDX-License-Identifier: MPL-2.0
#include "bouts.h"

#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

using Eigen::Vector2d;

// Stations along the body as parts of its length from the neck end, and shapes of the curves. Common practice of
// makers, no source; lengths are parts of the body length unless noted.
constexpr double upper_widest = 0.200;
constexpr double waist = 0.450;
constexpr double lower_widest = 0.795;
constexpr double upper_corner_at = 0.378;
constexpr double lower_corner_at = 0.602;
constexpr double corner_reach = 0.79;      // how far a corner stands out, from waist to bout [parts of that difference]
constexpr double tip_width = 0.0175;       // width of a corner's blunt end

Vector2d direction(double degrees_below_outward)
{
  const double a = degrees_below_outward * std::numbers::pi / 180.0;
  return {-std::sin(a), std::cos(a)};
}

// Circular end arc from the centre line outwards at the neck end: sign = +1; at the lower end, towards it: sign = -1.
CurvePiece end_arc(double length, double radius, double half_angle, double sign)
{
  const Vector2d centre(sign * (0.5 * length - radius), 0.0);
  const Vector2d u(sign * radius, 0.0);
  const Vector2d v(0.0, radius);
  if (sign > 0.0)
    return EllipticArc{.centre = centre, .u = u, .v = v, .from = 0.0, .to = half_angle};
  return EllipticArc{.centre = centre, .u = u, .v = v, .from = half_angle, .to = 0.0};
}

CurveEnd end_of(const CurvePiece& piece, double t, double reach)
{
  const CurvePoint p = evaluate(piece, t);
  return {.position = p.position, .direction = p.tangent(), .curvature = p.curvature(), .reach = reach};
}

} // namespace

double corner_tip_width(const BoutsOutline& outline) { return tip_width * outline.length; }

std::vector<CurvePiece> bouts_half(const BoutsOutline& o)
{
  const double L = o.length;
  const double upper = 0.5 * o.upper_bout;
  const double centre = 0.5 * o.centre_bout;
  const double lower = 0.5 * o.lower_bout;
  const auto x_at = [L](double part) { return L * (0.5 - part); };
  const Vector2d down(-1.0, 0.0);

  const CurveEnd upper_max{.position = {x_at(upper_widest), upper}, .direction = down, .curvature = 1.0 / (0.80 * upper), .reach = 0.0};
  const CurveEnd waist_min{.position = {x_at(waist), centre}, .direction = down, .curvature = -1.0 / (0.27 * L), .reach = 0.0};
  const CurveEnd lower_max{.position = {x_at(lower_widest), lower}, .direction = down, .curvature = 1.0 / (0.80 * lower), .reach = 0.0};
  const auto with_reach = [](CurveEnd end, double reach)
  {
    end.reach = reach;
    return end;
  };

  // A corner: middle of its tip, axis pointing outwards, the two curves enclosing a small angle about it.
  const Vector2d upper_tip_middle(x_at(upper_corner_at), centre + corner_reach * (upper - centre));
  const Vector2d lower_tip_middle(x_at(lower_corner_at), centre + corner_reach * (lower - centre));
  const Vector2d upper_axis = direction(24.0);
  const Vector2d lower_axis = direction(-20.0);
  const double half_tip = 0.5 * corner_tip_width(o);
  const auto across = [](const Vector2d& axis) { return Vector2d(axis.y(), -axis.x()); }; // towards the neck
  const Vector2d a_upper = upper_tip_middle + half_tip * across(upper_axis);
  const Vector2d b_upper = upper_tip_middle - half_tip * across(upper_axis);
  const Vector2d b_lower = lower_tip_middle + half_tip * across(lower_axis);
  const Vector2d a_lower = lower_tip_middle - half_tip * across(lower_axis);

  const CurvePiece top = end_arc(L, 0.80 * o.upper_bout, 0.20, 1.0);
  const CurvePiece bottom = end_arc(L, 0.78 * o.lower_bout, 0.22, -1.0);
  std::vector<CurvePiece> pieces;
  pieces.push_back(top);
  pieces.push_back(smooth_piece(end_of(top, 1.0, 1.30 * upper), with_reach(upper_max, 1.30 * upper)));
  pieces.push_back(smooth_piece(with_reach(upper_max, 0.20 * L),
                                {.position = a_upper, .direction = direction(42.0), .curvature = -1.0 / (0.07 * L), .reach = 0.10 * L}));
  pieces.push_back(line(a_upper, b_upper));
  pieces.push_back(smooth_piece({.position = b_upper, .direction = -direction(4.0), .curvature = -1.0 / (0.14 * L), .reach = 0.10 * L},
                                with_reach(waist_min, 0.12 * L)));
  pieces.push_back(smooth_piece(with_reach(waist_min, 0.20 * L),
                                {.position = b_lower, .direction = direction(-2.0), .curvature = -1.0 / (0.16 * L), .reach = 0.16 * L}));
  pieces.push_back(line(b_lower, a_lower));
  pieces.push_back(smooth_piece({.position = a_lower, .direction = -direction(-40.0), .curvature = -1.0 / (0.08 * L), .reach = 0.11 * L},
                                with_reach(lower_max, 0.22 * L)));
  pieces.push_back(smooth_piece(with_reach(lower_max, 1.30 * lower), end_of(bottom, 0.0, 1.30 * lower)));
  pieces.push_back(bottom);
  return pieces;
}

} // namespace plate
