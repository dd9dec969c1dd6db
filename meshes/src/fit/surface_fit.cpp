// SPDX-License-Identifier: MPL-2.0
#include <plate/meshes/surface_fit.h>

#include "../gauss.h"
#include "point_checks.h"
#include "robust.h"
#include "smoothing.h"
#include "spline_basis.h"
#include "summarise.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

using Eigen::Vector2d;

constexpr int degree = 3;
constexpr int order = degree + 1;
constexpr std::size_t least_points = 10;     // a bent surface has six constants; the rest shows the noise
constexpr double most_coefficients = 2500.0; // squares of 7 mm on a viola; the time grows with the square of it
constexpr double per_point = 0.7;            // coefficients: cross-validation does not follow more
constexpr double margin_part = 0.05;         // of the region's diagonal, kept around it for points beyond the edge
constexpr double outlier_part = 0.01;        // of the range of the values: less is no outlier
constexpr double most_outliers = 0.2;        // of the points
constexpr int most_rounds = 12;

SplineBasis basis_along(const SmoothSurface& s, int axis)
{
  const auto intervals = static_cast<int>(axis == 0 ? s.coefficients.rows() : s.coefficients.cols()) - degree;
  return {degree, s.low(axis), s.high(axis), intervals, SplineBasis::Ends::open};
}

// Box of the region with a margin, and zero coefficients on squares about as far apart as the points.
SmoothSurface empty_surface(std::span<const Vector2d> region, std::size_t num_points)
{
  const Box box = box_of(region);
  const double margin = margin_part * box.diagonal();
  SmoothSurface s{box.low - Vector2d(margin, margin), box.high + Vector2d(margin, margin), {}};
  const Vector2d size = s.high - s.low;
  const double wanted = std::min(per_point * static_cast<double>(num_points), most_coefficients);
  const double step = std::sqrt(size.x() * size.y() / wanted);
  const auto count = [&](double length) { return std::clamp(static_cast<int>(length / step), 2, 400) + degree; };
  s.coefficients = Eigen::MatrixXd::Zero(count(size.x()), count(size.y()));
  return s;
}

// Integrals of products of derivatives of the splines of one variable, (size, size) with a band.
Eigen::MatrixXd gram(const SplineBasis& basis, int derivative)
{
  Eigen::MatrixXd G = Eigen::MatrixXd::Zero(basis.size(), basis.size());
  for (int k = 0; k < basis.intervals(); ++k)
    for (const auto& [x, w] : gauss_points_16)
    {
      const SplineBasis::Local b = basis.at(basis.low() + basis.step() * (k + x), derivative);
      for (int i = 0; i < order; ++i)
        for (int j = 0; j < order; ++j)
          G(b.first + i, b.first + j) +=
              w * basis.step() * b.values[static_cast<std::size_t>(i)] * b.values[static_cast<std::size_t>(j)];
    }
  return G;
}

// Bending energy of a thin plate: f_xx^2 + 2 f_xy^2 + f_yy^2 over the box. Coefficient (i, j) has the number i ny + j.
Eigen::SparseMatrix<double> bending_energy(const SplineBasis& x, const SplineBasis& y)
{
  const Eigen::MatrixXd x0 = gram(x, 0), x1 = gram(x, 1), x2 = gram(x, 2);
  const Eigen::MatrixXd y0 = gram(y, 0), y1 = gram(y, 1), y2 = gram(y, 2);
  std::vector<Eigen::Triplet<double>> entries;
  for (int i = 0; i < x.size(); ++i)
    for (int k = std::max(0, i - degree); k <= std::min(x.size() - 1, i + degree); ++k)
      for (int j = 0; j < y.size(); ++j)
        for (int l = std::max(0, j - degree); l <= std::min(y.size() - 1, j + degree); ++l)
          entries.emplace_back(i * y.size() + j, k * y.size() + l,
                               x2(i, k) * y0(j, l) + 2.0 * x1(i, k) * y1(j, l) + x0(i, k) * y2(j, l));
  const int n = x.size() * y.size();
  Eigen::SparseMatrix<double> R(n, n);
  R.setFromTriplets(entries.begin(), entries.end());
  return R;
}

SmoothingProblem problem_of(std::span<const SurfacePoint> points, const std::vector<char>& used, const SplineBasis& x,
                            const SplineBasis& y, const Eigen::SparseMatrix<double>& roughness)
{
  std::vector<Eigen::Triplet<double>> entries;
  std::vector<double> values;
  for (std::size_t p = 0; p < points.size(); ++p)
  {
    if (used[p] == 0)
      continue;
    const SplineBasis::Local bx = x.at(points[p].place.x(), 0);
    const SplineBasis::Local by = y.at(points[p].place.y(), 0);
    const auto row = static_cast<int>(values.size());
    for (int i = 0; i < order; ++i)
      for (int j = 0; j < order; ++j)
        entries.emplace_back(row, (bx.first + i) * y.size() + by.first + j,
                             bx.values[static_cast<std::size_t>(i)] * by.values[static_cast<std::size_t>(j)]);
    values.push_back(points[p].value);
  }
  SmoothingProblem problem{
      .basis = {static_cast<Eigen::Index>(values.size()), x.size() * y.size()},
      .roughness = roughness,
      .order = 2,
      .values = Eigen::Map<const Eigen::VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()))};
  problem.basis.setFromTriplets(entries.begin(), entries.end());
  return problem;
}

// Fits again and again until no point in use is an outlier.
class SurfaceFitter
{
public:
  SurfaceFitter(std::span<const SurfacePoint> points, std::span<const Vector2d> region, double least_outlier)
      : points_(points), surface_(empty_surface(region, points.size())), x_(basis_along(surface_, 0)),
        y_(basis_along(surface_, 1)), roughness_(bending_energy(x_, y_)), residuals_(points.size()),
        least_outlier_(least_outlier)
  {
    const Box box{surface_.low, surface_.high};
    for (const SurfacePoint& p : points)
      used_.push_back(box.contains(p.place) ? 1 : 0);
    inside_ = used_;
  }

  SurfaceFit run()
  {
    for (int round = 0; round < most_rounds; ++round)
    {
      fit();
      if (!drop_outliers())
        break;
    }
    return {.surface = surface_, .report = report(), .cross_validated = std::sqrt(score_)};
  }

private:
  void fit()
  {
    const SmoothingResult result = solve_smoothing(problem_of(points_, used_, x_, y_, roughness_));
    score_ = result.score;
    surface_.coefficients = result.coefficients.reshaped(y_.size(), x_.size()).transpose();
    for (std::size_t i = 0; i < points_.size(); ++i)
      residuals_[i] = points_[i].value - evaluate(surface_, points_[i].place).value;
  }

  bool drop_outliers()
  {
    std::vector<double> in_use;
    for (std::size_t i = 0; i < points_.size(); ++i)
      if (used_[i] != 0)
        in_use.push_back(residuals_[i]);
    const double limit = std::max(outlier_deviations * robust_deviation(in_use), least_outlier_);
    bool changed = choose_used(residuals_, limit, used_);
    for (std::size_t i = 0; i < used_.size(); ++i)
      if (inside_[i] == 0)
        used_[i] = 0;
    const auto left = static_cast<std::size_t>(std::count(used_.begin(), used_.end(), 1));
    const std::size_t out = points_.size() - left;
    if (static_cast<double>(out) > most_outliers * static_cast<double>(points_.size()) || left < least_points)
      throw InvalidInput(
          message("points: ", out, " of ", points_.size(),
                  " do not fit a smooth surface over the plate; are all columns in mm, and the origin on "
                  "the centre line at half the length?"));
    return changed;
  }

  [[nodiscard]] FitReport report() const
  {
    std::vector<FitResidual> residuals;
    for (std::size_t i = 0; i < points_.size(); ++i)
      residuals.push_back({.point = i, .place = points_[i].place, .residual = residuals_[i]});
    return summarise(residuals, used_);
  }

  std::span<const SurfacePoint> points_;
  SmoothSurface surface_;
  SplineBasis x_;
  SplineBasis y_;
  Eigen::SparseMatrix<double> roughness_;
  std::vector<double> residuals_;
  std::vector<char> used_;
  std::vector<char> inside_; // of the box
  double least_outlier_;     // [m]
  double score_ = 0.0;
};

// Range of the values, outliers left aside: three standard deviations to either side.
double range_of(std::span<const SurfacePoint> points)
{
  std::vector<double> values;
  for (const SurfacePoint& p : points)
    values.push_back(p.value);
  const double middle = median(values);
  for (double& v : values)
    v -= middle;
  return 6.0 * robust_deviation(values);
}

} // namespace

SurfaceValue evaluate(const SmoothSurface& surface, const Vector2d& point)
{
  const SplineBasis x = basis_along(surface, 0);
  const SplineBasis y = basis_along(surface, 1);
  const Vector2d nearest = point.cwiseMax(surface.low).cwiseMin(surface.high);
  const SplineBasis::Local x0 = x.at(nearest.x(), 0), x1 = x.at(nearest.x(), 1);
  const SplineBasis::Local y0 = y.at(nearest.y(), 0), y1 = y.at(nearest.y(), 1);
  SurfaceValue out{0.0, 0.0, 0.0};
  for (int i = 0; i < order; ++i)
    for (int j = 0; j < order; ++j)
    {
      const double c = surface.coefficients(x0.first + i, y0.first + j);
      const auto a = static_cast<std::size_t>(i), b = static_cast<std::size_t>(j);
      out.value += c * x0.values[a] * y0.values[b];
      out.slope_x += c * x1.values[a] * y0.values[b];
      out.slope_y += c * x0.values[a] * y1.values[b];
    }
  out.value += out.slope_x * (point.x() - nearest.x()) + out.slope_y * (point.y() - nearest.y());
  return out;
}

SurfaceFit fit_surface(std::span<const SurfacePoint> points, std::span<const Vector2d> region, double least_outlier)
{
  std::vector<Vector2d> places;
  places.reserve(points.size());
  for (const SurfacePoint& p : points)
    places.push_back(p.place);
  check_points(places, least_points);
  for (std::size_t i = 0; i < points.size(); ++i)
    if (!std::isfinite(points[i].value))
      throw InvalidInput(message("points: the value of number ", i + 1, " is not finite"));
  check_coverage(places, region);
  if (least_outlier == 0.0)
    least_outlier = outlier_part * range_of(points);
  return SurfaceFitter(points, region, least_outlier).run();
}

} // namespace plate
