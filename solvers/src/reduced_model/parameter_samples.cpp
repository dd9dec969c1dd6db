// SPDX-License-Identifier: MPL-2.0
#include "parameter_samples.h"

#include <plate/core/error.h>

#include <cmath>

namespace plate::reduced
{

namespace
{

bool is_prime(std::size_t n)
{
  for (std::size_t d = 2; d * d <= n; ++d)
    if (n % d == 0)
      return false;
  return true;
}

std::vector<std::size_t> first_primes(std::size_t count)
{
  std::vector<std::size_t> primes;
  for (std::size_t n = 2; primes.size() < count; ++n)
    if (is_prime(n))
      primes.push_back(n);
  return primes;
}

/// Digits of an index mirrored at the point.
double radical_inverse(std::size_t index, std::size_t base)
{
  double value = 0.0;
  double digit = 1.0 / static_cast<double>(base);
  for (; index > 0; index /= base, digit /= static_cast<double>(base))
    value += static_cast<double>(index % base) * digit;
  return value;
}

double between(const ParameterBox& box, std::size_t k, double share)
{
  return box.low[k] + share * (box.high[k] - box.low[k]);
}

} // namespace

void check_box(const ParameterBox& box)
{
  if (box.low.empty() || box.low.size() != box.high.size())
    throw InvalidInput(message("ReducedModel: the box needs as many lower as upper limits, at least one; got ",
                               box.low.size(), " and ", box.high.size()));
  for (std::size_t k = 0; k < box.low.size(); ++k)
    if (!(box.low[k] < box.high[k]) || !std::isfinite(box.high[k] - box.low[k]))
      throw InvalidInput(message("ReducedModel: the range of parameter ", k + 1, " must be finite and ascending; got ",
                                 box.low[k], " to ", box.high[k]));
}

void check_inside(const ParameterBox& box, std::span<const double> point)
{
  if (point.size() != box.low.size())
    throw InvalidInput(
        message("ReducedModel: ", box.low.size(), " parameters are needed, got ", point.size(), "; give one for each"));
  for (std::size_t k = 0; k < point.size(); ++k)
  {
    const double rounding = 1e-12 * (box.high[k] - box.low[k]);
    if (!(point[k] >= box.low[k] - rounding && point[k] <= box.high[k] + rounding))
      throw InvalidInput(message("ReducedModel: parameter ", k + 1, " = ", point[k], " lies outside its box, ",
                                 box.low[k], " to ", box.high[k], "; build a reduced model of a wider box"));
  }
}

Eigen::VectorXd unit_coordinates(const ParameterBox& box, std::span<const double> point)
{
  Eigen::VectorXd u(static_cast<Eigen::Index>(point.size()));
  for (std::size_t k = 0; k < point.size(); ++k)
    u(static_cast<Eigen::Index>(k)) = 2.0 * (point[k] - box.low[k]) / (box.high[k] - box.low[k]) - 1.0;
  return u;
}

Point centre_of(const ParameterBox& box)
{
  Point centre;
  for (std::size_t k = 0; k < box.low.size(); ++k)
    centre.push_back(between(box, k, 0.5));
  return centre;
}

std::vector<Point> corners_of(const ParameterBox& box, std::size_t most)
{
  const std::size_t size = box.low.size();
  std::vector<Point> corners;
  for (std::size_t half = 0; corners.size() < most && (half == 0 || half >> (size - 1) == 0); ++half)
    for (const bool opposite : {false, true})
    {
      Point corner;
      for (std::size_t k = 0; k < size; ++k)
        corner.push_back((((half >> k) & 1U) != 0) != opposite ? box.high[k] : box.low[k]);
      corners.push_back(corner);
    }
  return corners;
}

std::vector<Point> inner_points(const ParameterBox& box, std::size_t count, std::size_t skipped)
{
  const std::vector<std::size_t> bases = first_primes(box.low.size());
  std::vector<Point> points;
  for (std::size_t i = skipped; i < skipped + count; ++i)
  {
    Point point;
    for (std::size_t k = 0; k < bases.size(); ++k)
      point.push_back(between(box, k, radical_inverse(i + 1, bases[k])));
    points.push_back(point);
  }
  return points;
}

} // namespace plate::reduced
