// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/plate_geometry.h>

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr int chords_per_piece = 32;
constexpr double least_clearance = 0.0015; // between two edges, over the plate's length: 0.6 mm on a viola
constexpr double touching = 1e-6;          // of a curve with itself, over the plate's length

double cross(const Vector2d& a, const Vector2d& b)
{
  return a.x() * b.y() - a.y() * b.x();
}

/// A closed polygon along a curve, in runs of chords with their boxes so that far ones are skipped.
class Contour
{
public:
  Contour(std::string name, std::vector<Vector2d> points) : name_(std::move(name)), points_(std::move(points))
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

  /// Even-odd rule.
  [[nodiscard]] bool contains(const Vector2d& p) const
  {
    bool inside = false;
    for (std::size_t i = 0; i < points_.size(); ++i)
    {
      const Vector2d &a = at(i), &b = at(i + 1);
      if ((a.y() > p.y()) != (b.y() > p.y()) && p.x() < a.x() + (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()))
        inside = !inside;
    }
    return inside;
  }

private:
  std::string name_;
  std::vector<Vector2d> points_;
  std::vector<Run> runs_;
};

bool chords_cross(const Vector2d& a, const Vector2d& b, const Vector2d& c, const Vector2d& d)
{
  const double abc = cross(b - a, c - a), abd = cross(b - a, d - a);
  const double cda = cross(d - c, a - c), cdb = cross(d - c, b - c);
  return ((abc > 0.0) != (abd > 0.0)) && ((cda > 0.0) != (cdb > 0.0));
}

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
  for_near_chords(contour, contour, clearance,
                  [&](std::size_t i, std::size_t j)
                  {
                    if (j <= i + 1 || (i == 0 && j == n - 1))
                      return;
                    if (chords_cross(contour.at(i), contour.at(i + 1), contour.at(j), contour.at(j + 1)))
                      throw InvalidInput(message(contour.name(), " crosses itself near ", place(contour.at(i)),
                                                 "; its measures do not fit each other"));
                    if (distance_of_chords(contour, i, contour, j) < clearance)
                      throw InvalidInput(message(contour.name(), " touches itself near ", place(contour.at(i)),
                                                 "; its curve must keep clear of itself"));
                  });
}

void check_apart(const Contour& a, const Contour& b, double clearance)
{
  for_near_chords(a, b, 0.0,
                  [&](std::size_t i, std::size_t j)
                  {
                    if (chords_cross(a.at(i), a.at(i + 1), b.at(j), b.at(j + 1)))
                      throw InvalidInput(message(b.name(), " crosses ", a.name(), " near ", place(a.at(i)),
                                                 "; move it away or make it smaller"));
                  });
  for_near_chords(a, b, clearance,
                  [&](std::size_t i, std::size_t j)
                  {
                    const double distance = distance_of_chords(a, i, b, j);
                    if (distance < clearance)
                      throw InvalidInput(message(b.name(), " comes within ", distance * 1e3, " mm of ", a.name(),
                                                 " near ", place(a.at(i)), "; at least ", clearance * 1e3,
                                                 " mm must remain"));
                  });
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
    contours.emplace_back(std::move(name), std::move(points));
  }
  if (geometry.bar)
  {
    const auto corners = bar_corners(*geometry.bar);
    contours.emplace_back("the bar", std::vector<Vector2d>(corners.begin(), corners.end()));
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
    if (!outline.contains(contours[i].at(0)))
      throw InvalidInput(message(contours[i].name(), " lies outside the outline, near ", place(contours[i].at(0)),
                                 "; the plate reaches from x = ", -0.5e3 * outline_length(geometry.outline), " to ",
                                 0.5e3 * outline_length(geometry.outline), " mm and is ",
                                 1e3 * outline_width(geometry.outline), " mm wide"));
    for (std::size_t j = 1; j < contours.size(); ++j)
      if (i != j && contours[j].contains(contours[i].at(0)))
        throw InvalidInput(message(contours[i].name(), " lies inside ", contours[j].name(), "; move one of them"));
  }
}

} // namespace plate
