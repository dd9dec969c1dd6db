// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/curve.h>

#include "gauss.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

using Eigen::Vector2d;

CurvePoint evaluate_arc(const EllipticArc& arc, double t)
{
  const double turn = arc.to - arc.from; // [rad]
  const double angle = arc.from + turn * t;
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  const Vector2d radius = arc.u * c + arc.v * s;
  return {.position = arc.centre + radius,
          .first = turn * (arc.v * c - arc.u * s),
          .second = -turn * turn * radius};
}

// De Casteljau; the last three levels hold the derivatives.
CurvePoint evaluate_bezier(const BezierCurve& curve, double t)
{
  std::vector<Vector2d> p = curve.points;
  const std::size_t degree = p.size() - 1;
  CurvePoint result{.position = p[0], .first = Vector2d::Zero(), .second = Vector2d::Zero()};
  const auto n = static_cast<double>(degree);
  for (std::size_t left = degree; left > 0; --left)
  {
    if (left == 2)
      result.second = n * (n - 1.0) * (p[2] - 2.0 * p[1] + p[0]);
    if (left == 1)
      result.first = n * (p[1] - p[0]);
    for (std::size_t i = 0; i < left; ++i)
      p[i] = (1.0 - t) * p[i] + t * p[i + 1];
  }
  result.position = p[0];
  return result;
}

template <class Map>
CurvePiece mapped(const CurvePiece& piece, const Map& linear, const Vector2d& shift)
{
  if (const auto* arc = std::get_if<EllipticArc>(&piece))
    return EllipticArc{.centre = linear(arc->centre) + shift,
                       .u = linear(arc->u),
                       .v = linear(arc->v),
                       .from = arc->from,
                       .to = arc->to};
  BezierCurve curve = std::get<BezierCurve>(piece);
  for (Vector2d& p : curve.points)
    p = linear(p) + shift;
  return curve;
}

double cross(const Vector2d& a, const Vector2d& b) { return a.x() * b.y() - a.y() * b.x(); }

// Integral of f over the parameter of a piece, on sub-intervals so that sharp bends are resolved.
template <class F>
double integrate(const CurvePiece& piece, const F& f)
{
  constexpr int parts = 8;
  double sum = 0.0;
  for (int k = 0; k < parts; ++k)
    for (const auto& [x, w] : gauss_points_16)
    {
      const double t = (k + x) / parts;
      sum += w / parts * f(evaluate(piece, t));
    }
  return sum;
}

} // namespace

double CurvePoint::curvature() const { return cross(first, second) / std::pow(first.norm(), 3); }

CurvePiece line(const Vector2d& from, const Vector2d& to) { return BezierCurve{{from, to}}; }

CurvePiece smooth_piece(const CurveEnd& from, const CurveEnd& to)
{
  const auto left = [](const Vector2d& d) { return Vector2d(-d.y(), d.x()); };
  const Vector2d d0 = from.reach * from.direction;
  const Vector2d d1 = to.reach * to.direction;
  const Vector2d s0 = from.curvature * from.reach * from.reach * left(from.direction);
  const Vector2d s1 = to.curvature * to.reach * to.reach * left(to.direction);
  const Vector2d& p0 = from.position;
  const Vector2d& p5 = to.position;
  return BezierCurve{{p0, p0 + d0 / 5.0, p0 + 2.0 * d0 / 5.0 + s0 / 20.0, p5 - 2.0 * d1 / 5.0 + s1 / 20.0,
                      p5 - d1 / 5.0, p5}};
}

CurvePoint evaluate(const CurvePiece& piece, double t)
{
  if (const auto* arc = std::get_if<EllipticArc>(&piece))
    return evaluate_arc(*arc, t);
  return evaluate_bezier(std::get<BezierCurve>(piece), t);
}

CurvePiece reversed(const CurvePiece& piece)
{
  if (const auto* arc = std::get_if<EllipticArc>(&piece))
  {
    EllipticArc back = *arc;
    std::swap(back.from, back.to);
    return back;
  }
  BezierCurve back = std::get<BezierCurve>(piece);
  std::reverse(back.points.begin(), back.points.end());
  return back;
}

CurvePiece mirrored(const CurvePiece& piece)
{
  return mapped(piece, [](const Vector2d& p) { return Vector2d(p.x(), -p.y()); }, Vector2d::Zero());
}

CurvePiece moved(const CurvePiece& piece, double angle, const Vector2d& shift)
{
  const Eigen::Rotation2Dd turn(angle);
  return mapped(piece, [&](const Vector2d& p) -> Vector2d { return turn * p; }, shift);
}

CurveLoop mirrored(const CurveLoop& loop)
{
  CurveLoop image;
  for (const CurvePiece& piece : loop.pieces)
    image.pieces.push_back(mirrored(piece));
  return reversed(image);
}

CurveLoop reversed(const CurveLoop& loop)
{
  CurveLoop back;
  for (std::size_t i = loop.pieces.size(); i-- > 0;)
    back.pieces.push_back(reversed(loop.pieces[i]));
  return back;
}

double enclosed_area(const CurveLoop& loop)
{
  double area = 0.0; // [m^2]
  for (const CurvePiece& piece : loop.pieces)
    area += integrate(piece, [](const CurvePoint& p) { return 0.5 * cross(p.position, p.first); });
  return area;
}

double length(const CurvePiece& piece)
{
  return integrate(piece, [](const CurvePoint& p) { return p.first.norm(); });
}

double length(const CurveLoop& loop)
{
  double sum = 0.0; // [m]
  for (const CurvePiece& piece : loop.pieces)
    sum += length(piece);
  return sum;
}

double plate_angle(const CurveLoop& loop, std::size_t piece)
{
  const std::size_t before = (piece + loop.pieces.size() - 1) % loop.pieces.size();
  const Vector2d in = evaluate(loop.pieces[before], 1.0).tangent();
  const Vector2d out = evaluate(loop.pieces[piece], 0.0).tangent();
  return std::numbers::pi - std::atan2(cross(in, out), in.dot(out));
}

bool is_corner(const CurveLoop& loop, std::size_t piece)
{
  return std::abs(plate_angle(loop, piece) - std::numbers::pi) > std::numbers::pi / 180.0;
}

std::vector<Vector2d> sample(const CurveLoop& loop, int per_piece)
{
  std::vector<Vector2d> points;
  for (const CurvePiece& piece : loop.pieces)
    for (int k = 0; k < per_piece; ++k)
      points.push_back(evaluate(piece, static_cast<double>(k) / per_piece).position);
  return points;
}

} // namespace plate
