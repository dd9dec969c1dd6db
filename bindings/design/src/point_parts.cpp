// SPDX-License-Identifier: MPL-2.0
#include "point_parts.h"

#include "located.h"
#include "named_file.h"

#include <plate/design/design_error.h>

#include <array>

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

SurfaceFit fit_table(const PointTable& table, const std::vector<Eigen::Vector2d>& region)
{
  std::vector<SurfacePoint> points;
  for (const PointRow& row : table.rows)
    points.push_back({mm * Eigen::Vector2d(row.values[0], row.values[1]), mm * row.values[2]});
  return fit_surface(points, region);
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

PointFiles::Fitted<SurfaceFit> PointFiles::surface(const std::string& name, std::string_view column,
                                                   const std::vector<Eigen::Vector2d>& region)
{
  const std::lock_guard lock(mutex_);
  const ColumnOfFile key(name, column);
  if (const auto known = surfaces_.find(key); known != surfaces_.end() && known->second.region == region)
    return known->second.fitted;
  if (tables_.find(key) == tables_.end())
  {
    const std::array<PointColumn, 3> columns{{{"x"}, {"y"}, {column}}};
    tables_.emplace(key, read(name, columns));
  }
  const PointTable& table = tables_.at(key);
  Surface& surface = surfaces_[key];
  surface = {region, {fit_table(table, region), lines_of(table)}};
  return surface.fitted;
}

CurveLoop PointParts::curve(const TableReader& table, const std::string& part)
{
  const auto fitted = located(table, "file", [&] { return files_.curve(table.text("file")); });
  add(table, part, fitted.fit.report, fitted.lines);
  return fitted.fit.loop;
}

SmoothSurface PointParts::surface(const TableReader& table, const std::string& part, std::string_view column,
                                  const Outline& outline)
{
  constexpr int per_piece = 16; // chords: their distance from the outline does not matter
  const std::vector<Eigen::Vector2d> region = sample(outline_loop(outline), per_piece);
  const auto fitted = located(table, "file", [&] { return files_.surface(table.text("file"), column, region); });
  add(table, part, fitted.fit.report, fitted.lines);
  return fitted.fit.surface;
}

void PointParts::add(const TableReader& table, const std::string& part, const FitReport& report,
                     const std::vector<int>& lines)
{
  PartFit fit{.part = part, .file = table.text("file"), .report = report, .outlier_lines = {}};
  for (const FitResidual& outlier : report.outliers)
    fit.outlier_lines.push_back(lines[outlier.point]);
  fits_.push_back(std::move(fit));
}

} // namespace plate
