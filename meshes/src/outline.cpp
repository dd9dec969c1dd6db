// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/outline.h>

#include "bouts.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

using Eigen::Vector2d;

void check_positive(const char* kind, const char* what, double value)
{
  if (!(std::isfinite(value) && value > 0.0))
    throw InvalidInput(message("outline ", kind, ": ", what, " must be positive; got ", value * 1e3, " mm"));
}

void check(const RectangleOutline& o)
{
  check_positive("rectangle", "length", o.length);
  check_positive("rectangle", "width", o.width);
}

void check(const EllipseOutline& o)
{
  check_positive("ellipse", "length", o.length);
  check_positive("ellipse", "width", o.width);
}

void check(const BoutsOutline& o)
{
  check_positive("bouts", "length", o.length);
  check_positive("bouts", "lower_bout", o.lower_bout);
  check_positive("bouts", "centre_bout", o.centre_bout);
  check_positive("bouts", "upper_bout", o.upper_bout);
  const auto within = [&](const char* what, double value, double least, double most)
  {
    if (!(value >= least && value <= most))
      throw InvalidInput(message("outline bouts: ", what, " = ", value * 1e3, " mm is out of proportion; with length ",
                                 o.length * 1e3, ", lower_bout ", o.lower_bout * 1e3, ", centre_bout ",
                                 o.centre_bout * 1e3, ", upper_bout ", o.upper_bout * 1e3, " mm it must be from ",
                                 least * 1e3, " to ", most * 1e3, " mm"));
  };
  // The span in which the construction gives a simple curve that still looks like an instrument (tests/unit/meshes).
  within("lower_bout", o.lower_bout, 0.48 * o.length, 0.72 * o.length);
  within("upper_bout", o.upper_bout, 0.38 * o.length, 0.64 * o.length);
  within("centre_bout", o.centre_bout, 0.5 * o.upper_bout, 0.8 * std::min(o.upper_bout, o.lower_bout));
}

void check(const CurveOutline& o)
{
  check_positive("of a curve", "length", o.length);
  check_positive("of a curve", "width", o.width);
}

CurveLoop loop_of(const CurveOutline& o)
{
  return o.loop;
}

CurveLoop loop_of(const RectangleOutline& o)
{
  const double a = 0.5 * o.length;
  const double b = 0.5 * o.width;
  const Vector2d p00(-a, -b), p10(a, -b), p11(a, b), p01(-a, b);
  return {{line(p00, p10), line(p10, p11), line(p11, p01), line(p01, p00)}};
}

CurveLoop loop_of(const EllipseOutline& o)
{
  const Vector2d u(0.5 * o.length, 0.0);
  const Vector2d v(0.0, 0.5 * o.width);
  CurveLoop loop;
  // Quarters as mirror images of one, so that the loop is symmetric to the last bit.
  const CurvePiece quarter =
      EllipticArc{.centre = Vector2d::Zero(), .u = u, .v = v, .from = 0.0, .to = 0.5 * std::numbers::pi};
  const CurvePiece lower =
      EllipticArc{.centre = Vector2d::Zero(), .u = -u, .v = v, .from = 0.5 * std::numbers::pi, .to = 0.0};
  loop.pieces = {quarter, lower, reversed(mirrored(lower)), reversed(mirrored(quarter))};
  return loop;
}

CurveLoop loop_of(const BoutsOutline& o)
{
  CurveLoop loop{bouts_half(o)};
  const std::size_t half = loop.pieces.size();
  for (std::size_t i = half; i-- > 0;)
    loop.pieces.push_back(reversed(mirrored(loop.pieces[i])));
  return loop;
}

} // namespace

CurveOutline curve_outline(const CurveLoop& loop)
{
  constexpr int per_piece = 200; // an extremum is missed by the square of a step: micrometres
  Vector2d low(HUGE_VAL, HUGE_VAL), high(-HUGE_VAL, -HUGE_VAL);
  for (const Vector2d& p : sample(loop, per_piece))
  {
    low = low.cwiseMin(p);
    high = high.cwiseMax(p);
  }
  const Vector2d size = high - low;
  const Vector2d middle = 0.5 * (low + high);
  if (!(std::abs(middle.x()) <= 0.01 * size.x() && std::abs(middle.y()) <= 0.1 * size.y()))
    throw InvalidInput(
        message("outline of a curve: its middle is at x = ", middle.x() * 1e3, ", y = ", middle.y() * 1e3,
                " mm; the origin belongs on the centre line at half the length: take the same amounts from "
                "x and y of all points of the plate"));
  return {.loop = loop, .length = size.x(), .width = size.y()};
}

double outline_length(const Outline& outline)
{
  return std::visit([](const auto& o) { return o.length; }, outline);
}

double outline_width(const Outline& outline)
{
  if (const auto* bouts = std::get_if<BoutsOutline>(&outline))
    return std::max(bouts->lower_bout, bouts->upper_bout);
  if (const auto* rectangle = std::get_if<RectangleOutline>(&outline))
    return rectangle->width;
  if (const auto* ellipse = std::get_if<EllipseOutline>(&outline))
    return ellipse->width;
  return std::get<CurveOutline>(outline).width;
}

CurveLoop outline_loop(const Outline& outline)
{
  return std::visit(
      [](const auto& o)
      {
        check(o);
        return loop_of(o);
      },
      outline);
}

} // namespace plate
