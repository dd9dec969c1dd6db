// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/thickness_fit.h>

#include "robust.h"

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace plate
{

namespace
{

constexpr int chords_per_piece = 16;  // of the outline as a region: their distance from it does not matter
constexpr double outlier_part = 0.02; // of the thickness in the bouts: less is no outlier

GraduatedThickness graduation_of(const Eigen::Vector4d& t)
{
  return {.centre = t(0), .bouts = t(1), .channel = t(2), .edge = t(3)};
}

// How much each of the four thicknesses counts at the points, (points, 4): a graduation is linear in them.
Eigen::MatrixX4d shares(std::span<const SurfacePoint> points, const Outline& outline)
{
  Eigen::MatrixX4d A(static_cast<Eigen::Index>(points.size()), 4);
  for (int k = 0; k < 4; ++k)
  {
    Eigen::Vector4d t = Eigen::Vector4d::Ones();
    t(k) += 1.0;
    const ThicknessField field(outline, graduation_of(t));
    for (std::size_t i = 0; i < points.size(); ++i)
      A(static_cast<Eigen::Index>(i), k) = field.at(points[i].place) - 1.0;
  }
  return A;
}

// The graduation nearest to the points, outliers counting little; nothing if it is none.
std::optional<GraduatedThickness> nearest_graduation(std::span<const SurfacePoint> points, const Outline& outline)
{
  const Eigen::MatrixX4d A = shares(points, outline);
  Eigen::VectorXd values(A.rows());
  for (Eigen::Index i = 0; i < A.rows(); ++i)
    values(i) = points[static_cast<std::size_t>(i)].value;
  Eigen::VectorXd weights = Eigen::VectorXd::Ones(A.rows());
  Eigen::Vector4d t = Eigen::Vector4d::Zero();
  constexpr int rounds = 10;
  for (int k = 0; k < rounds; ++k)
  {
    const Eigen::Matrix4d normal = A.transpose() * weights.asDiagonal() * A;
    t = normal.ldlt().solve(A.transpose() * weights.cwiseProduct(values));
    const Eigen::VectorXd off = (values - A * t).cwiseAbs();
    const double usual = std::max(median({off.data(), off.data() + off.size()}), 1e-12);
    weights = (2.0 * usual / off.array().max(2.0 * usual)).matrix();
  }
  if (!(t.allFinite() && t.minCoeff() > 0.0 && t.maxCoeff() < 2.0 * values.maxCoeff()))
    return std::nullopt;
  return graduation_of(t);
}

std::vector<SurfacePoint> deviations(std::span<const SurfacePoint> points, const ThicknessField& field)
{
  std::vector<SurfacePoint> out(points.begin(), points.end());
  for (SurfacePoint& p : out)
    p.value -= field.at(p.place);
  return out;
}

ThicknessFit over(const std::optional<GraduatedThickness>& graduation, SurfaceFit fit)
{
  return {.thickness = {.graduation = graduation, .deviation = std::move(fit.surface)},
          .report = std::move(fit.report)};
}

} // namespace

ThicknessFit fit_thickness(std::span<const SurfacePoint> points, const Outline& outline)
{
  const std::vector<Eigen::Vector2d> region = sample(outline_loop(outline), chords_per_piece);
  SurfaceFit plain = fit_surface(points, region);
  const std::optional<GraduatedThickness> graduation = nearest_graduation(points, outline);
  if (!graduation)
    return over({}, std::move(plain));
  const double least_outlier = outlier_part * graduation->bouts;
  SurfaceFit rest = fit_surface(deviations(points, ThicknessField(outline, *graduation)), region, least_outlier);
  return rest.cross_validated < plain.cross_validated ? over(graduation, std::move(rest)) : over({}, std::move(plain));
}

} // namespace plate
