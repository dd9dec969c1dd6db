// SPDX-License-Identifier: MPL-2.0
#include "fits_report.h"

#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <nlohmann/json.hpp>

#include <cmath>
#include <cstddef>
#include <numbers>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;

constexpr std::size_t most_warnings = 10;

/// How a residual is shown.
struct Shown
{
  double scale; // per SI unit
  const char* unit;
  const char* key; // ending of JSON keys
};

Shown shown(FitQuantity quantity)
{
  if (quantity == FitQuantity::angle)
    return {180.0 / std::numbers::pi, "degrees", "degrees"};
  return {millimetres, "mm", "mm"};
}

Json place_json(const Eigen::Vector2d& place)
{
  return {rounded(place.x() * millimetres), rounded(place.y() * millimetres)};
}

std::string place_text(const Eigen::Vector2d& place)
{
  return message("x ", fixed(place.x() * millimetres, 1), ", y ", fixed(place.y() * millimetres, 1), " mm");
}

Json fit_json(const PartFit& fit)
{
  const auto& [scale, unit, key] = shown(fit.quantity);
  Json outliers = Json::array();
  for (std::size_t i = 0; i < fit.report.outliers.size(); ++i)
  {
    const FitResidual& outlier = fit.report.outliers[i];
    outliers.push_back({{"line", fit.outlier_lines[i]},
                        {"at_mm", place_json(outlier.place)},
                        {message("residual_", key), rounded(outlier.residual * scale)}});
  }
  return {{"part", fit.part},
          {"file", fit.file},
          {"points", fit.report.points},
          {"outliers", outliers},
          {message("rms_", key), rounded(fit.report.rms * scale)},
          {message("largest_", key), rounded(std::abs(fit.report.largest.residual) * scale)},
          {"largest_at_mm", place_json(fit.report.largest.place)}};
}

} // namespace

std::string fits_text(const std::vector<PartFit>& fits)
{
  std::string out;
  for (const PartFit& fit : fits)
  {
    const auto& [scale, unit, key] = shown(fit.quantity);
    const std::size_t left_out = fit.report.outliers.size();
    out += message(
        "  ", fit.part, " from ", fit.report.points, " points of ", fit.file, ": rms ",
        fixed(fit.report.rms * scale, 3), " ", unit, " off, at most ",
        fixed(std::abs(fit.report.largest.residual) * scale, 2), " ", unit, " (", place_text(fit.report.largest.place),
        ")", left_out > 0 ? message("; ", left_out, left_out == 1 ? " outlier" : " outliers", " left out") : "", "\n");
  }
  return out;
}

Json fits_json(const std::vector<PartFit>& fits)
{
  Json out = Json::array();
  for (const PartFit& fit : fits)
    out.push_back(fit_json(fit));
  return out;
}

std::string outlier_warnings(const std::vector<PartFit>& fits)
{
  std::string out;
  for (const PartFit& fit : fits)
  {
    const auto& [scale, unit, key] = shown(fit.quantity);
    const std::vector<FitResidual>& outliers = fit.report.outliers;
    for (std::size_t i = 0; i < outliers.size() && i < most_warnings; ++i)
      out += message("warning: ", fit.file, ":", fit.outlier_lines[i], ": the point at ", place_text(outliers[i].place),
                     " lies ", fixed(std::abs(outliers[i].residual) * scale, 2), " ", unit, " off the ", fit.part,
                     " through the others and is left out\n");
    if (outliers.size() > most_warnings)
      out += message("warning: ", fit.file, ": ", outliers.size() - most_warnings, " more points are left out\n");
  }
  return out;
}

} // namespace plate
