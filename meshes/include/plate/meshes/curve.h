// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <variant>
#include <vector>

namespace plate
{

/// Arc of an ellipse, position = centre + u cos(a) + v sin(a) for the angle a from `from` to `to`.
struct EllipticArc
{
  Eigen::Vector2d centre; ///< [m]
  Eigen::Vector2d u;      ///< half axis at angle 0 [m]
  Eigen::Vector2d v;      ///< half axis at a quarter turn [m]
  double from;            ///< [rad]
  double to;              ///< [rad]
};

/// Bezier curve; two control points make a straight line.
struct BezierCurve
{
  std::vector<Eigen::Vector2d> points; ///< at least 2 [m]
};

/// One smooth piece of a planform curve, run through by a parameter from 0 to 1.
using CurvePiece = std::variant<EllipticArc, BezierCurve>;

/// A point of a curve with the derivatives by the parameter.
struct CurvePoint
{
  Eigen::Vector2d position; ///< [m]
  Eigen::Vector2d first;    ///< [m]
  Eigen::Vector2d second;   ///< [m]

  [[nodiscard]] Eigen::Vector2d tangent() const { return first.normalized(); } ///< [-]
  /// To the left of the tangent: into the plate [-].
  [[nodiscard]] Eigen::Vector2d left() const { return Eigen::Vector2d(-first.y(), first.x()).normalized(); }
  /// Positive where the curve turns left [1/m].
  [[nodiscard]] double curvature() const;
};

/// Straight piece from one point to another.
[[nodiscard]] CurvePiece line(const Eigen::Vector2d& from, const Eigen::Vector2d& to);

/// A point with direction and curvature, where smooth pieces meet.
struct CurveEnd
{
  Eigen::Vector2d position;  ///< [m]
  Eigen::Vector2d direction; ///< of travel, unit [-]
  double curvature;          ///< positive to the left [1/m]
  double reach;              ///< size of the derivative by the parameter, about the length of the piece [m]
};

/// Quintic curve with given position, direction and curvature at both ends: pieces joined by it are curvature-continuous.
[[nodiscard]] CurvePiece smooth_piece(const CurveEnd& from, const CurveEnd& to);

/// Position and derivatives at the parameter t in [0, 1].
[[nodiscard]] CurvePoint evaluate(const CurvePiece& piece, double t);

/// The same curve run through backwards.
[[nodiscard]] CurvePiece reversed(const CurvePiece& piece);
/// Mirror image in the centre line (y -> -y), run through in the same sense of t.
[[nodiscard]] CurvePiece mirrored(const CurvePiece& piece);
/// Turned by an angle [rad] about the origin, then moved by `shift` [m].
[[nodiscard]] CurvePiece moved(const CurvePiece& piece, double angle, const Eigen::Vector2d& shift);

/// Closed curve of smooth pieces, each starting where the one before ends; the plate lies to the left.
struct CurveLoop
{
  std::vector<CurvePiece> pieces;
};

/// Mirror image in the centre line with the plate still to the left.
[[nodiscard]] CurveLoop mirrored(const CurveLoop& loop);
/// The same loop with the plate on the other side.
[[nodiscard]] CurveLoop reversed(const CurveLoop& loop);

/// Area enclosed, positive for a counter-clockwise loop [m^2].
[[nodiscard]] double enclosed_area(const CurveLoop& loop);
[[nodiscard]] double length(const CurvePiece& piece); ///< arc length [m]
[[nodiscard]] double length(const CurveLoop& loop);   ///< arc length [m]

/// Angle of the plate at the start of a piece: pi where the joint is smooth, less at a convex corner, more at a
/// re-entrant one [rad].
[[nodiscard]] double plate_angle(const CurveLoop& loop, std::size_t piece);

/// Whether the loop turns by more than a degree at the start of a piece.
[[nodiscard]] bool is_corner(const CurveLoop& loop, std::size_t piece);

/// Points along the loop for checks and drawings, `per_piece` from each piece [m].
[[nodiscard]] std::vector<Eigen::Vector2d> sample(const CurveLoop& loop, int per_piece);

} // namespace plate
