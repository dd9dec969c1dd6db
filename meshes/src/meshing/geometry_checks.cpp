// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/plate_geometry.h>

#include "exact_predicates.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr int chords_per_piece = 32;
constexpr double least_clearance = 0.0015; // between two edges, over the plate's length: 0.6 mm on a viola
constexpr double touching = 1e-6;          // of a curve with itself, over the plate's length

/// A closed polygon along a curve, in runs of chords with their boxes so that far ones are skipped.
class Contour
{
public:
  /// @param sags  greatest distance of each chord from its curve [m]
  Contour(std::string name, std::vector<Vector2d> points, std::vector<double> sags)
      : name_(std::move(name)), points_(std::move(points)), sags_(std::move(sags))
  {
    constexpr std::size_t run = 16;
    for (std::size_t begin = 0; begin < points_.size(); begin += run)
    {
      Run r{begin, std::min(begin + run, points_.size()), {HUGE_VAL, HUGE_VAL}, {-HUGE_VAL, -HUGE_VAL}};
      for (std::size_t i = r.begin; i <= r.end; ++i)
      {
        r.low = r.low.cwiseMin(at(i));
        r.high = r.high.cwiseMax(at(i));
      }
      runs_.push_back(r);
    }
  }

  struct Run
  {
    std::size_t begin, end; // chords
    Vector2d low, high;     // box [m]
  };

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] const std::vector<Run>& runs() const { return runs_; }
  [[nodiscard]] std::size_t size() const { return points_.size(); }
  [[nodiscard]] const Vector2d& at(std::size_t i) const { return points_[i % points_.size()]; }

  [[nodiscard]] double sag(std::size_t chord) const { return sags_[chord]; }
  [[nodiscard]] bool holds(const Vector2d& p) const { return contains(points_, p); }

private:
  std::string name_;
  std::vector<Vector2d> points_;
  std::vector<double> sags_; // [m]
  std::vector<Run> runs_;
};

double distance_to_chord(const Vector2d& p, const Vector2d& a, const Vector2d& b)
{
  const Vector2d ab = b - a;
  const double t = std::clamp((p - a).dot(ab) / std::max(ab.squaredNorm(), 1e-300), 0.0, 1.0);
  return (p - (a + t * ab)).norm();
}

bool boxes_apart(const Contour::Run& a, const Contour::Run& b, double margin)
{
  return (a.low.array() > b.high.array() + margin).any() || (b.low.array() > a.high.array() + margin).any();
}

/// Calls visit(i, j) for pairs of chords whose boxes come closer than the margin.
template <class Visit>
void for_near_chords(const Contour& a, const Contour& b, double margin, Visit visit)
{
  for (const Contour::Run& ra : a.runs())
    for (const Contour::Run& rb : b.runs())
    {
      if (boxes_apart(ra, rb, margin))
        continue;
      for (std::size_t i = ra.begin; i < ra.end; ++i)
        for (std::size_t j = rb.begin; j < rb.end; ++j)
          visit(i, j);
    }
}

std::string place(const Vector2d& p)
{
  return message("x = ", p.x() * 1e3, ", y = ", p.y() * 1e3, " mm");
}

Meeting meeting_of_chords(const Contour& a, std::size_t i, const Contour& b, std::size_t j)
{
  return meeting(a.at(i), a.at(i + 1), b.at(j), b.at(j + 1));
}

// Of two chords that do not meet.
double distance_of_chords(const Contour& a, std::size_t i, const Contour& b, std::size_t j)
{
  return std::min(
      {distance_to_chord(a.at(i), b.at(j), b.at(j + 1)), distance_to_chord(a.at(i + 1), b.at(j), b.at(j + 1)),
       distance_to_chord(b.at(j), a.at(i), a.at(i + 1)), distance_to_chord(b.at(j + 1), a.at(i), a.at(i + 1))});
}

// A curve that only touches itself, or runs back on itself, ends the mesher as surely as one that crosses itself.
void check_simple(const Contour& contour, double clearance)
{
  const std::size_t n = contour.size();
  const auto fail = [&](const char* what, std::size_t chord, const char* remedy)
  { throw InvalidInput(message(contour.name(), what, place(contour.at(chord)), remedy)); };
  for_near_chords(contour, contour, clearance,
                  [&](std::size_t i, std::size_t j)
                  {
                    if (j <= i + 1 || (i == 0 && j == n - 1))
                      return;
                    const Meeting met = meeting_of_chords(contour, i, contour, j);
                    if (met == Meeting::crossing)
                      fail(" crosses itself near ", i, "; its measures do not fit each other");
                    if (met == Meeting::touching || distance_of_chords(contour, i, contour, j) < clearance)
                      fail(" touches itself near ", i, "; its curve must keep clear of itself");
                  });
}

void check_apart(const Contour& a, const Contour& b, double clearance)
{
  double nearest = clearance; // [m]
  std::size_t where = 0;
  for_near_chords(a, b, 2.0 * clearance, // the curves are nearer than their chords by a fraction of the clearance
                  [&](std::size_t i, std::size_t j)
                  {
                    if (meeting_of_chords(a, i, b, j) != Meeting::none)
                      throw InvalidInput(message(b.name(), " crosses ", a.name(), " near ", place(a.at(i)),
                                                 "; move it away or make it smaller"));
                    const double distance = distance_of_chords(a, i, b, j) - a.sag(i) - b.sag(j);
                    if (distance < nearest)
                    {
                      nearest = distance;
                      where = i;
                    }
                  });
  if (nearest < clearance)
    throw InvalidInput(message(b.name(), " comes within ", std::max(nearest, 0.0) * 1e3, " mm of ", a.name(), " near ",
                               place(a.at(where)), "; at least ", clearance * 1e3, " mm must remain, so move it ",
                               (clearance - nearest) * 1e3, " mm away or make it smaller"));
}

/// How far the chords of a loop lie from their curves, each by its middle: a chord of so small a turn is farthest there
/// to a few percent, which the factor covers [m].
std::vector<double> sags_of(const CurveLoop& loop)
{
  constexpr double safety = 1.25;
  std::vector<double> sags;
  for (const CurvePiece& piece : loop.pieces)
    for (int k = 0; k < chords_per_piece; ++k)
    {
      const auto at = [&](double step) { return evaluate(piece, (k + step) / chords_per_piece).position; };
      sags.push_back(safety * distance_to_chord(at(0.5), at(0.0), at(1.0)));
    }
  return sags;
}

std::vector<Contour> contours_of(const PlateGeometry& geometry)
{
  const PlateBoundary boundary = boundary_of(geometry);
  std::vector<Contour> contours;
  for (std::size_t l = 0; l < boundary.loops.size(); ++l)
  {
    std::string name = boundary.names[l];
    if (l > 0)
    {
      const std::size_t entry = boundary.soundholes[l - 1];
      const bool is_mirror = l > 1 && boundary.soundholes[l - 2] == entry;
      name = message("soundhole ", entry + 1, is_mirror ? " (its mirror image)" : "");
    }
    else
      name = "the outline";
    std::vector<Vector2d> points = sample(boundary.loops[l], chords_per_piece);
    if (!std::all_of(points.begin(), points.end(), [](const Vector2d& p) { return p.allFinite(); }))
      throw InvalidInput(message(name, " has points that are not finite"));
    contours.emplace_back(std::move(name), std::move(points), sags_of(boundary.loops[l]));
  }
  if (geometry.bar)
  {
    const auto corners = bar_corners(*geometry.bar);
    contours.emplace_back("the bar", std::vector<Vector2d>(corners.begin(), corners.end()),
                          std::vector<double>(corners.size(), 0.0));
  }
  return contours;
}

void check_bar_measures(const BarFootprintShape& bar)
{
  const bool finite = std::isfinite(bar.centre) && std::isfinite(bar.offset) && std::isfinite(bar.apex) &&
                      std::isfinite(bar.angle.in_radians());
  if (!(finite && bar.length > 0.0 && bar.width > 0.0 && std::isfinite(bar.length) && bar.width < bar.length))
    throw InvalidInput(message("the bar needs 0 < width < length and finite measures; got length ", bar.length * 1e3,
                               " mm, width ", bar.width * 1e3, " mm"));
}

} // namespace

void check_geometry(const PlateGeometry& geometry)
{
  static_cast<void>(ArchSurface(geometry.outline, geometry.arching));
  static_cast<void>(ThicknessField(geometry.outline, geometry.thickness));
  if (geometry.bar)
    check_bar_measures(*geometry.bar);
  const std::vector<Contour> contours = contours_of(geometry);
  const double clearance = least_clearance * outline_length(geometry.outline);
  const Contour& outline = contours.front();
  for (std::size_t i = 0; i < contours.size(); ++i)
  {
    check_simple(contours[i], touching * outline_length(geometry.outline));
    for (std::size_t j = i + 1; j < contours.size(); ++j)
      check_apart(contours[i], contours[j], clearance);
  }
  for (std::size_t i = 1; i < contours.size(); ++i)
  {
    if (!outline.holds(contours[i].at(0)))
      throw InvalidInput(message(contours[i].name(), " lies outside the outline, near ", place(contours[i].at(0)),
                                 "; the plate reaches from x = ", -0.5e3 * outline_length(geometry.outline), " to ",
                                 0.5e3 * outline_length(geometry.outline), " mm and is ",
                                 1e3 * outline_width(geometry.outline), " mm wide"));
    for (std::size_t j = 1; j < contours.size(); ++j)
      if (i != j && contours[j].holds(contours[i].at(0)))
        throw InvalidInput(message(contours[i].name(), " lies inside ", contours[j].name(), "; move one of them"));
  }
}

} // namespace plate
