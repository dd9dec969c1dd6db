// SPDX-License-Identifier: MPL-2.0
#include "exact_predicates.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

namespace plate
{
namespace
{

using Eigen::Vector2d;

/// An exact sum: numbers that do not overlap, ascending in size, room for the six products of an orientation.
class ExactSum
{
public:
  void add(double value)
  {
    std::size_t kept = 0;
    for (std::size_t i = 0; i < size_; ++i)
    {
      // Sum and rounding error of two doubles [Knuth1998] sec. 4.2.2.
      const double sum = value + parts_[i];
      const double from_part = sum - value;
      const double error = (value - (sum - from_part)) + (parts_[i] - from_part);
      if (error != 0.0)
        parts_[kept++] = error;
      value = sum;
    }
    if (value != 0.0)
      parts_[kept++] = value;
    size_ = kept;
  }

  void add_product(double a, double b)
  {
    const double product = a * b;
    add(std::fma(a, b, -product));
    add(product);
  }

  [[nodiscard]] int sign() const { return size_ == 0 ? 0 : parts_[size_ - 1] > 0.0 ? 1 : -1; }

private:
  std::array<double, 12> parts_{};
  std::size_t size_ = 0;
};

int exact_orientation(const Vector2d& a, const Vector2d& b, const Vector2d& c)
{
  ExactSum sum;
  sum.add_product(a.x(), b.y());
  sum.add_product(-a.y(), b.x());
  sum.add_product(b.x(), c.y());
  sum.add_product(-b.y(), c.x());
  sum.add_product(c.x(), a.y());
  sum.add_product(-c.y(), a.x());
  return sum.sign();
}

bool in_box(const Vector2d& p, const Vector2d& a, const Vector2d& b)
{
  return (p.array() >= a.cwiseMin(b).array()).all() && (p.array() <= a.cwiseMax(b).array()).all();
}

} // namespace

int orientation(const Vector2d& a, const Vector2d& b, const Vector2d& c)
{
  constexpr double half_unit = 0.5 * std::numeric_limits<double>::epsilon();
  constexpr double bound = (3.0 + 16.0 * half_unit) * half_unit; // ccwerrboundA of the source
  const double left = (a.x() - c.x()) * (b.y() - c.y());
  const double right = (a.y() - c.y()) * (b.x() - c.x());
  const double determinant = left - right;
  if (std::abs(determinant) > bound * (std::abs(left) + std::abs(right)))
    return determinant > 0.0 ? 1 : -1;
  return exact_orientation(a, b, c);
}

Meeting meeting(const Vector2d& a, const Vector2d& b, const Vector2d& c, const Vector2d& d)
{
  const int abc = orientation(a, b, c), abd = orientation(a, b, d);
  const int cda = orientation(c, d, a), cdb = orientation(c, d, b);
  if (abc * abd < 0 && cda * cdb < 0)
    return Meeting::crossing;
  const bool touch = (abc == 0 && in_box(c, a, b)) || (abd == 0 && in_box(d, a, b)) || (cda == 0 && in_box(a, c, d)) ||
                     (cdb == 0 && in_box(b, c, d));
  return touch ? Meeting::touching : Meeting::none;
}

bool contains(const std::vector<Vector2d>& polygon, const Vector2d& p)
{
  bool inside = false;
  for (std::size_t i = 0; i < polygon.size(); ++i)
  {
    const Vector2d& a = polygon[i];
    const Vector2d& b = polygon[(i + 1) % polygon.size()];
    if ((a.y() > p.y()) == (b.y() > p.y()))
      continue;
    const Vector2d& lower = a.y() < b.y() ? a : b;
    const Vector2d& upper = a.y() < b.y() ? b : a;
    if (orientation(lower, upper, p) > 0)
      inside = !inside;
  }
  return inside;
}

} // namespace plate
