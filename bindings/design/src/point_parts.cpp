// SPDX-License-Identifier: MPL-2.0
#include "point_parts.h"

#include "located.h"
#include "named_file.h"

#include <plate/design/design_error.h>

#include <algorithm>
#include <array>
#include <cstddef>

namespace plate
{
namespace
{

constexpr double mm = 1e-3; // unit of all columns but corner

std::vector<int> lines_of(const PointTable& table)
{
  std::vector<int> lines;
  lines.reserve(table.rows.size());
  for (const PointRow& row : table.rows)
    lines.push_back(row.line);
  return lines;
}

CurveFit fit_curve(const PointTable& table, const std::string& name)
{
  std::vector<Eigen::Vector2d> points;
  std::vector<std::size_t> corners;
  for (const PointRow& row : table.rows)
  {
    if (row.values[2] != 0.0 && row.values[2] != 1.0)
      throw DesignError(message(name, ":", row.line, ": corner = ", row.values[2], ": must be 1 at a corner, else 0"));
    if (row.values[2] == 1.0)
      corners.push_back(points.size());
    points.emplace_back(mm * row.values[0], mm * row.values[1]);
  }
  return fit_closed_curve(points, table.has_optional ? std::optional(corners) : std::nullopt);
}

std::vector<MeasuredDirection> measured_directions(const PointTable& table)
{
  std::vector<MeasuredDirection> points;
  for (const PointRow& row : table.rows)
    points.push_back({mm * Eigen::Vector2d(row.values[0], row.values[1]), Angle::degrees(row.values[2])});
  return points;
}

std::vector<SurfacePoint> surface_points(const PointTable& table)
{
  std::vector<SurfacePoint> points;
  for (const PointRow& row : table.rows)
    points.push_back({mm * Eigen::Vector2d(row.values[0], row.values[1]), mm * row.values[2]});
  return points;
}

std::vector<Eigen::Vector2d> region_of(const Outline& outline)
{
  constexpr int per_piece = 16; // chords: their distance from the outline does not matter
  return sample(outline_loop(outline), per_piece);
}

} // namespace

PointTable PointFiles::read(const std::string& name, std::span<const PointColumn> columns) const
{
  const std::filesystem::path path = resolve(name, access_);
  return read_points(bytes_of(path, max_point_file_bytes), (access_.folder / name).lexically_normal().string(),
                     columns);
}

PointFiles::Fitted<CurveFit> PointFiles::curve(const std::string& name)
{
  const std::lock_guard lock(mutex_);
  const auto known = curves_.find(name);
  if (known != curves_.end())
    return known->second;
  constexpr std::array<PointColumn, 3> columns{{{"x"}, {"y"}, {"corner", false}}};
  const PointTable table = read(name, columns);
  return curves_.emplace(name, Fitted<CurveFit>{fit_curve(table, name), lines_of(table)}).first->second;
}

template <class Fit>
PointFiles::OverOutline<Fit>& PointFiles::read_once(std::map<std::string, OverOutline<Fit>>& known,
                                                    const std::string& name, std::string_view column) const
{
  if (known.find(name) == known.end())
  {
    const std::array<PointColumn, 3> columns{{{"x"}, {"y"}, {column}}};
    known.emplace(name, OverOutline<Fit>{.table = read(name, columns), .region = {}, .fitted = {}});
  }
  return known.at(name);
}

template <class Fit, class MakeFit>
PointFiles::Fitted<Fit> PointFiles::fitted_over(std::map<std::string, OverOutline<Fit>>& known, const std::string& name,
                                                std::string_view column, const Outline& outline,
                                                const MakeFit& make_fit)
{
  const std::lock_guard lock(mutex_);
  OverOutline<Fit>& entry = read_once(known, name, column);
  std::vector<Eigen::Vector2d> region = region_of(outline);
  if (!entry.fitted || entry.region != region)
  {
    entry.fitted = Fitted<Fit>{make_fit(entry.table, region), lines_of(entry.table)};
    entry.region = std::move(region);
  }
  return *entry.fitted;
}

PointFiles::Fitted<ArchFit> PointFiles::arching(const std::string& name, const Outline& outline)
{
  return fitted_over(archings_, name, "z", outline,
                     [&](const PointTable& table, const auto&) { return fit_arching(surface_points(table), outline); });
}

PointFiles::Fitted<ThicknessFit> PointFiles::thickness(const std::string& name, const Outline& outline)
{
  return fitted_over(thicknesses_, name, "t", outline,
                     [&](const PointTable& table, const auto&)
                     { return fit_thickness(surface_points(table), outline); });
}

PointFiles::Fitted<DirectionFit> PointFiles::directions(const std::string& name, const Outline& outline)
{
  return fitted_over(directions_, name, "angle", outline,
                     [](const PointTable& table, const auto& region)
                     { return fit_directions(measured_directions(table), region); });
}

double PointFiles::median_thickness(const std::string& name)
{
  const std::lock_guard lock(mutex_);
  std::vector<double> values;
  for (const PointRow& row : read_once(thicknesses_, name, "t").table.rows)
    values.push_back(mm * row.values[2]);
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  if (!(*middle > 0.0))
    throw InvalidInput(message("half of the thicknesses t are not positive, their median is ", *middle / mm, " mm"));
  return *middle;
}

CurveLoop PointParts::curve(const TableReader& table, const std::string& part)
{
  const auto fitted = located(table, "file", [&] { return files_.curve(table.text("file")); });
  add(table.text("file"), part, fitted.fit.report, fitted.lines);
  return fitted.fit.loop;
}

SurfaceArching PointParts::arching(const TableReader& table, const Outline& outline)
{
  const auto fitted = located(table, "file", [&] { return files_.arching(table.text("file"), outline); });
  add(table.text("file"), "arching", fitted.fit.report, fitted.lines);
  return fitted.fit.arching;
}

SurfaceThickness PointParts::thickness(const TableReader& table, const Outline& outline)
{
  const auto fitted = located(table, "file", [&] { return files_.thickness(table.text("file"), outline); });
  add(table.text("file"), "thickness", fitted.fit.report, fitted.lines);
  return fitted.fit.thickness;
}

DirectionField PointParts::directions(const TableReader& ply, const std::string& part, const Outline& outline)
{
  const std::string file = ply.text("angle_file");
  const auto fitted = located(ply, "angle_file", [&] { return files_.directions(file, outline); });
  add(file, part, fitted.fit.report, fitted.lines, FitQuantity::angle);
  return fitted.fit.field;
}

void PointParts::add(const std::string& file, const std::string& part, const FitReport& report,
                     const std::vector<int>& lines, FitQuantity quantity)
{
  PartFit fit{.part = part, .file = file, .report = report, .outlier_lines = {}, .quantity = quantity};
  for (const FitResidual& outlier : report.outliers)
    fit.outlier_lines.push_back(lines[outlier.point]);
  fits_.push_back(std::move(fit));
}

} // namespace plate
