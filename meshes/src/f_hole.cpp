// SPDX-License-Identifier: MPL-2.0
#include "f_hole.h"

#include <plate/core/error.h>

#include <Eigen/Geometry>

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <utility>

namespace plate
{

namespace
{

using Eigen::Vector2d;

// Proportions of our own f-hole, drawn from the trade's measures of a violin's (common practice, no source).
constexpr double hook_over_eye = 2.6;    // height of hook or tail beyond the eye's centre, over the eye's radius
constexpr double lean = 0.30;            // of the stem from the centre line, over the tilt of the line through the eyes
constexpr double nick_half_width = 0.16; // over the stem's width
constexpr double nick_depth = 0.22;      // into the plate, over the stem's width
constexpr double wing_tip_from_shoulder = 1.15; // across, over the stem's width
constexpr double least_wing = 0.045;            // width of a wing between stem and eye, over the hole's length
constexpr double wing_leaves_eye = 148.0 * std::numbers::pi / 180.0; // where the wing's end meets the eye, from inwards

/// Measures of a plate's f-hole by the length of the plate.
struct PlateMeasures
{
  double plate_length; // [m]
  double length;       // of the hole [m]
  double tilt;         // [degrees]
};

// Violin, small and large viola, cello: lengths are common practice, no source. The tilts put the lower eye 12, 13, 15
// and 22 mm from the edge of a plate with the usual widths (common practice, no source), to half a millimetre.
constexpr std::array<PlateMeasures, 4> usual_measures = {
    {{0.355, 0.075, 40.0}, {0.390, 0.078, 40.5}, {0.430, 0.082, 40.5}, {0.757, 0.140, 42.5}}};

/// Straight between the rows; beyond them the hole keeps its proportion to the plate.
PlateMeasures measures_for(double plate_length)
{
  const auto scaled = [&](const PlateMeasures& row) {
    return PlateMeasures{plate_length, row.length * plate_length / row.plate_length, row.tilt};
  };
  if (plate_length <= usual_measures.front().plate_length)
    return scaled(usual_measures.front());
  if (plate_length >= usual_measures.back().plate_length)
    return scaled(usual_measures.back());
  std::size_t above = 1;
  while (usual_measures[above].plate_length < plate_length)
    ++above;
  const PlateMeasures& a = usual_measures[above - 1];
  const PlateMeasures& b = usual_measures[above];
  const double share = (plate_length - a.plate_length) / (b.plate_length - a.plate_length);
  return {plate_length, std::lerp(a.length, b.length, share), std::lerp(a.tilt, b.tilt, share)};
}

/// One half of the hole in its own axes: p up to the neck, q inwards to the centre line, origin in the middle of the
/// stem.
struct HalfHole
{
  Vector2d eye;  // centre [m]
  double radius; // of the eye [m]
  double top;    // greatest p [m]
  double stem;   // width [m]
  double angle;  // of the stem from p towards q [rad]
};

/// Where along q the stem's outer edge goes over into the hook [m].
double shoulder_place(const Vector2d& eye, double angle, double stem)
{
  return 0.45 * eye.x() * std::tan(angle) - 0.5 * stem; // beyond the stem's own line: it bends one way only
}

/// From the outer end of the nicks over the hook, round the eye, along the wing and back down to the inner nick.
std::vector<CurvePiece> half_path(const HalfHole& half)
{
  const Vector2d up(std::cos(half.angle), std::sin(half.angle));
  const Vector2d inward(-up.y(), up.x());
  const Vector2d outer_start = nick_half_width * half.stem * up - 0.5 * half.stem * inward;
  const Vector2d inner_end = nick_half_width * half.stem * up + 0.5 * half.stem * inward;

  // The hook: up the stem's outer edge, then two quarters of ellipses over the summit and down into the eye.
  const double r = half.radius;
  const double drop = half.top - half.eye.x();
  const Vector2d shoulder(half.eye.x() - 1.1 * drop, shoulder_place(half.eye, half.angle, half.stem));
  const Vector2d summit(half.top, shoulder.y() + 0.58 * (half.eye.y() + r - shoulder.y()));
  const double climb = summit.x() - shoulder.x();
  const double reach_out = summit.y() - shoulder.y();
  const double reach_in = half.eye.y() + r - summit.y();
  const double rise = shoulder.x() - outer_start.x();
  std::vector<CurvePiece> path;
  path.push_back(smooth_piece(
      {.position = outer_start, .direction = up, .curvature = 0.0, .reach = rise},
      {.position = shoulder, .direction = {1.0, 0.0}, .curvature = reach_out / (climb * climb), .reach = 0.6 * rise}));
  constexpr double quarter = 0.5 * std::numbers::pi;
  path.push_back(EllipticArc{
      .centre = {shoulder.x(), summit.y()}, .u = {0.0, -reach_out}, .v = {climb, 0.0}, .from = 0.0, .to = quarter});
  path.push_back(EllipticArc{
      .centre = {half.eye.x(), summit.y()}, .u = {drop, 0.0}, .v = {0.0, reach_in}, .from = 0.0, .to = quarter});
  // Round the eye, from its inner side over the bottom to the wing.
  const double turn = 2.0 * std::numbers::pi - wing_leaves_eye;
  for (const auto& [from, to] : {std::pair{0.0, 0.5 * turn}, std::pair{0.5 * turn, turn}})
    path.push_back(EllipticArc{.centre = half.eye, .u = {0.0, r}, .v = {-r, 0.0}, .from = from, .to = to});

  // The wing's end, straight to its tip on the stem's inner edge.
  const Vector2d leaves = evaluate(path.back(), 1.0).position;
  const Vector2d tip(half.eye.x() + 0.36 * drop, shoulder.y() + wing_tip_from_shoulder * half.stem);
  path.push_back(line(leaves, tip));
  const double fall = tip.x() - inner_end.x();
  path.push_back(
      smooth_piece({.position = tip, .direction = Vector2d(-1.0, -0.22).normalized(), .curvature = 0.0, .reach = fall},
                   {.position = inner_end, .direction = -up, .curvature = 0.0, .reach = fall}));
  return path;
}

/// A nick: two short straight cuts into the plate, seen along the path from `from` to `to`.
void add_nick(std::vector<CurvePiece>& path, const Vector2d& from, const Vector2d& to, double depth)
{
  const Vector2d along = (to - from).normalized();
  const Vector2d into_plate(along.y(), -along.x()); // the plate lies to the left of the path, q to the right of p
  const Vector2d tip = 0.5 * (from + to) + depth * into_plate;
  path.push_back(line(from, tip));
  path.push_back(line(tip, to));
}

void check_measure(const char* what, double value)
{
  if (!(value > 0.0 && std::isfinite(value)))
    throw InvalidInput(message("f-hole: ", what, " must be positive and finite; got ", value * 1e3, " mm"));
}

/// Distance of the eyes' centres along the plate's centre line [m].
double eye_distance(const FHole& hole)
{
  return *hole.length - 0.5 * hook_over_eye * (*hole.upper_eye + *hole.lower_eye);
}

} // namespace

FHole f_hole_with_defaults(const FHole& hole, const Outline& outline)
{
  const double plate_length = outline_length(outline);
  const PlateMeasures usual = measures_for(plate_length);
  FHole full = hole;
  full.length = hole.length.value_or(usual.length);
  check_measure("length", *full.length);
  full.upper_eye = hole.upper_eye.value_or(0.083 * *full.length);
  full.lower_eye = hole.lower_eye.value_or(0.117 * *full.length);
  full.stem = hole.stem.value_or(0.080 * *full.length);
  full.tilt = hole.tilt.value_or(Angle::degrees(usual.tilt));
  check_measure("upper_eye", *full.upper_eye);
  check_measure("lower_eye", *full.lower_eye);
  check_measure("stem", *full.stem);
  const double tilt = full.tilt->in_degrees();
  if (!(tilt >= 10.0 && tilt <= 50.0))
    throw InvalidInput(message("f-hole: tilt must be from 10 to 50 degrees; got ", tilt));
  const double distance = eye_distance(full);
  if (!(distance > 1.5 * (*full.upper_eye + *full.lower_eye) && distance > 5.0 * *full.stem))
    throw InvalidInput(message("f-hole: length ", *full.length * 1e3, " mm is too short for eyes of ",
                               *full.upper_eye * 1e3, " and ", *full.lower_eye * 1e3, " mm and a stem of ",
                               *full.stem * 1e3, " mm; smaller ones or a longer hole fit"));
  const Vector2d eye(0.5 * distance, 0.5 * distance * std::tan(full.tilt->in_radians()));
  const double wing = eye.y() - 0.5 * std::max(*full.upper_eye, *full.lower_eye) -
                      shoulder_place(eye, lean * full.tilt->in_radians(), *full.stem) -
                      wing_tip_from_shoulder * *full.stem; // [m]
  if (!(wing > least_wing * *full.length))
    throw InvalidInput(message("f-hole: at a tilt of ", tilt, " degrees ", std::max(wing, 0.0) * 1e3,
                               " mm of wing remain between stem and eye, at least ", least_wing * *full.length * 1e3,
                               " mm are needed; a greater tilt, smaller eyes or a narrower stem fit"));
  if (!full.where)
  {
    const double upper_eye_y = 0.0585 * plate_length + 0.5 * *full.upper_eye;
    full.where = Vector2d(-0.048 * plate_length, upper_eye_y + eye.y());
  }
  if (!full.where->allFinite())
    throw InvalidInput("f-hole: where must be two finite numbers");
  return full;
}

CurveLoop f_hole_loop(const FHole& hole)
{
  const double tilt = hole.tilt->in_radians();
  const double half_distance = 0.5 * eye_distance(hole);
  const Vector2d eye(half_distance, half_distance * std::tan(tilt));
  const double angle = lean * tilt;
  const auto half = [&](double diameter)
  {
    const double r = 0.5 * diameter;
    return HalfHole{.eye = eye, .radius = r, .top = eye.x() + hook_over_eye * r, .stem = *hole.stem, .angle = angle};
  };
  std::vector<CurvePiece> path = half_path(half(*hole.upper_eye));
  std::vector<CurvePiece> lower = half_path(half(*hole.lower_eye));
  for (CurvePiece& piece : lower) // the lower half is an upper one turned by half a turn
    piece = moved(piece, std::numbers::pi, Vector2d::Zero());

  const double depth = nick_depth * *hole.stem;
  add_nick(path, evaluate(path.back(), 1.0).position, evaluate(lower.front(), 0.0).position, depth);
  path.insert(path.end(), lower.begin(), lower.end());
  add_nick(path, evaluate(path.back(), 1.0).position, evaluate(path.front(), 0.0).position, depth);

  // From (p, q) to the plate: p is x, q runs against y.
  CurveLoop loop;
  for (const CurvePiece& piece : path)
    loop.pieces.push_back(moved(mirrored(piece), 0.0, *hole.where));
  return loop;
}

} // namespace plate
