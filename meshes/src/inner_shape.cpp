// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/inner_shape.h>

#include "bouts.h"

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>

namespace plate
{

namespace
{

using Eigen::Vector2d;

// Common practice, no source: flat rim and least height of the channel inside the edge, as parts of the length of a
// body; other outlines are taken as if twice as long as wide.
constexpr double rim_part = 0.009;
constexpr double channel_part = 0.020;

constexpr int degree = 16;         // resolves the waist; more only follows the corners
constexpr double smoothing = 1e-4; // keeps the polynomial calm where the corners are left out
constexpr int samples_per_piece = 80;
constexpr double samples_per_length = 400.0;
constexpr double corner_part = 0.085; // of a body's length, left out around a corner
constexpr double sharp_corner = 2.6;  // angle of the plate below which a corner stands out [rad]

double body_length(const Outline& outline)
{
  return std::min(outline_length(outline), 2.0 * outline_width(outline));
}

// Points of the outline drawn in by `inset`, side y > 0, the neighbourhood of the corners left out.
std::vector<Vector2d> inset_points(const BoutsOutline& outline, double inset)
{
  struct Part
  {
    BoutsPiece piece;
    double from, to; // share of the piece that belongs to the bout, not to a corner
  };
  constexpr std::array<Part, 8> parts{{{upper_end, 0.0, 1.0},
                                       {upper_shoulder, 0.0, 1.0},
                                       {upper_corner, 0.0, 0.45},
                                       {upper_centre, 0.6, 1.0},
                                       {lower_centre, 0.0, 0.4},
                                       {lower_corner, 0.55, 1.0},
                                       {lower_shoulder, 0.0, 1.0},
                                       {lower_end, 0.0, 1.0}}};
  const std::vector<CurvePiece> half = bouts_half(outline);
  std::vector<Vector2d> points;
  for (const Part& part : parts)
    for (int k = 0; k < samples_per_piece; ++k)
    {
      const double t = part.from + (part.to - part.from) * (k + 0.5) / samples_per_piece;
      const CurvePoint p = evaluate(half[part.piece], t);
      points.push_back(p.position + inset * p.left());
    }
  return points;
}

// The same for any curve: points at equal distances along it on both sides, the side y < 0 turned over.
std::vector<Vector2d> inset_points(const CurveOutline& outline, double inset)
{
  std::vector<Vector2d> corners;
  for (std::size_t i = 0; i < outline.loop.pieces.size(); ++i)
    if (plate_angle(outline.loop, i) < sharp_corner)
      corners.push_back(evaluate(outline.loop.pieces[i], 0.0).position);
  const double reach = corner_part * std::min(outline.length, 2.0 * outline.width);
  const auto near_corner = [&](const Vector2d& p)
  { return std::any_of(corners.begin(), corners.end(), [&](const Vector2d& c) { return (p - c).norm() < reach; }); };
  const double step = outline.length / samples_per_length;
  std::vector<Vector2d> points;
  for (const CurvePiece& piece : outline.loop.pieces)
  {
    const int count = std::max(1, static_cast<int>(length(piece) / step));
    for (int k = 0; k < count; ++k)
    {
      const CurvePoint p = evaluate(piece, (k + 0.5) / count);
      const Vector2d inner = p.position + inset * p.left();
      if (!near_corner(p.position))
        points.emplace_back(inner.x(), std::abs(inner.y()));
    }
  }
  return points;
}

// Values of T_0 ... T_n at s with two derivatives, one column each.
Eigen::MatrixX3d chebyshev_basis(int n, double s)
{
  Eigen::MatrixX3d basis(n + 1, 3);
  basis.row(0) << 1.0, 0.0, 0.0;
  basis.row(1) << s, 1.0, 0.0;
  for (int k = 2; k <= n; ++k)
    basis.row(k) << 2.0 * s * basis(k - 1, 0) - basis(k - 2, 0),
        2.0 * basis(k - 1, 0) + 2.0 * s * basis(k - 1, 1) - basis(k - 2, 1),
        4.0 * basis(k - 1, 1) + 2.0 * s * basis(k - 1, 2) - basis(k - 2, 2);
  return basis;
}

// Least squares in the half width, not in its square; high orders are held down.
Eigen::VectorXd fit(const std::vector<Vector2d>& points, double half_length)
{
  std::vector<Vector2d> used;
  for (const Vector2d& p : points)
    if (std::abs(p.x()) < half_length && p.y() > 0.1 * half_length)
      used.push_back(p);
  const auto rows = static_cast<Eigen::Index>(used.size());
  Eigen::MatrixXd A = Eigen::MatrixXd::Zero(rows + degree + 1, degree + 1);
  Eigen::VectorXd b = Eigen::VectorXd::Zero(rows + degree + 1);
  for (Eigen::Index i = 0; i < rows; ++i)
  {
    const Vector2d& p = used[static_cast<std::size_t>(i)];
    const double s = p.x() / half_length;
    const double weight = 0.5 / p.y(); // d(half width) = d(its square) / (2 half width)
    A.row(i).head(degree + 1) = weight * (1.0 - s * s) * chebyshev_basis(degree, s).col(0).transpose();
    b(i) = weight * p.y() * p.y();
  }
  for (int k = 0; k <= degree; ++k)
    A(rows + k, k) = smoothing * std::sqrt(static_cast<double>(rows)) * k * k / half_length;
  return A.colPivHouseholderQr().solve(b);
}

} // namespace

InnerShape::InnerShape(const Outline& outline)
    : half_length_(0.5 * outline_length(outline) - rim_part * body_length(outline)),
      rim_(rim_part * body_length(outline)), channel_(channel_part * body_length(outline))
{
  if (const auto* bouts = std::get_if<BoutsOutline>(&outline))
  {
    chebyshev_ = fit(inset_points(*bouts, rim_), half_length_);
    return;
  }
  if (const auto* curve = std::get_if<CurveOutline>(&outline))
  {
    chebyshev_ = fit(inset_points(*curve, rim_), half_length_);
    return;
  }
  const double half_width = 0.5 * outline_width(outline) - rim_;
  chebyshev_ = Eigen::VectorXd::Zero(3);
  chebyshev_(0) = half_width * half_width; // ellipse: B = b^2 (1 - s^2)
  if (std::holds_alternative<RectangleOutline>(outline))
  {
    chebyshev_(0) *= 1.5; // B = b^2 (1 - s^4), as 1 + s^2 = 3/2 T_0 + 1/2 T_2
    chebyshev_(2) = 0.5 * half_width * half_width;
  }
}

InnerShape::Width InnerShape::at(double x) const
{
  const double s = x / half_length_;
  const Eigen::RowVector3d p = chebyshev_.transpose() * chebyshev_basis(static_cast<int>(chebyshev_.size()) - 1, s);
  const double q = 1.0 - s * s;
  return {.squared = q * p(0),
          .slope = (q * p(1) - 2.0 * s * p(0)) / half_length_,
          .bend = (q * p(2) - 4.0 * s * p(1) - 2.0 * p(0)) / (half_length_ * half_length_)};
}

} // namespace plate
