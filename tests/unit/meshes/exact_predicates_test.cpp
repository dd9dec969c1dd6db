// SPDX-License-Identifier: MPL-2.0
#include "meshing/exact_predicates.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdint>
#include <limits>
#include <random>

using namespace plate;
using Eigen::Vector2d;

namespace
{

/// Orientation in whole numbers: coordinates below 2^30 make every step exact.
int whole_orientation(std::int64_t ax, std::int64_t ay, std::int64_t bx, std::int64_t by, std::int64_t cx,
                      std::int64_t cy)
{
  const std::int64_t d = (ax - cx) * (by - cy) - (ay - cy) * (bx - cx);
  return d > 0 ? 1 : d < 0 ? -1 : 0;
}

} // namespace

TEST_CASE("orientation agrees with whole numbers, also on lines and a unit beside them")
{
  std::mt19937_64 random(1);
  const auto draw = [&] { return static_cast<std::int64_t>(random() >> 35U); }; // below 2^29
  for (int i = 0; i < 20000; ++i)
  {
    const std::int64_t ax = draw(), ay = draw(), dx = draw() >> 12U, dy = draw() >> 12U;
    const std::int64_t m = static_cast<std::int64_t>(random() % 1000),
                       off = static_cast<std::int64_t>(random() % 3) - 1;
    const std::int64_t bx = ax + 700 * dx, by = ay + 700 * dy, cx = ax + m * dx, cy = ay + m * dy + off;
    const auto d = [](std::int64_t v)
    { return static_cast<double>(v) * 0x1p-40; }; // scaled by a power of two: still exact
    CHECK(orientation({d(ax), d(ay)}, {d(bx), d(by)}, {d(cx), d(cy)}) == whole_orientation(ax, ay, bx, by, cx, cy));
  }
}

TEST_CASE("a point one unit in the last place off a line is seen where rounding hides it")
{
  // On the diagonal from (12, 12) to (24, 24) near (0.5, 0.5): the plain formula errs here [Shewchuk1997] fig. 1.
  const double u = std::numeric_limits<double>::epsilon() / 2.0;
  int wrong_by_rounding = 0;
  for (int i = 0; i < 64; ++i)
    for (int j = 0; j < 64; ++j)
    {
      const Vector2d p(0.5 + i * u, 0.5 + j * u), a(12.0, 12.0), b(24.0, 24.0);
      const int expected = j > i ? 1 : j < i ? -1 : 0;
      CHECK(orientation(a, b, p) == expected);
      CHECK(orientation(b, a, p) == -expected);
      CHECK(orientation(p, a, b) == expected);
      const double plain = (a.x() - p.x()) * (b.y() - p.y()) - (a.y() - p.y()) * (b.x() - p.x());
      wrong_by_rounding += (plain > 0.0) - (plain < 0.0) != expected ? 1 : 0;
    }
  CHECK(wrong_by_rounding > 100); // or the case is too easy to prove anything
}

TEST_CASE("segments cross, touch or keep apart")
{
  const Vector2d a(0.0, 0.0), b(1.0, 1.0);
  CHECK(meeting(a, b, {0.0, 1.0}, {1.0, 0.0}) == Meeting::crossing);
  CHECK(meeting(a, b, {0.5, 0.5}, {1.0, 0.0}) == Meeting::touching);
  CHECK(meeting(a, b, {1.0, 1.0}, {2.0, 0.0}) == Meeting::touching);
  CHECK(meeting(a, b, {0.25, 0.25}, {2.0, 2.0}) == Meeting::touching); // overlap on one line
  CHECK(meeting(a, b, {2.0, 2.0}, {3.0, 3.0}) == Meeting::none);       // one line, apart
  CHECK(meeting(a, b, {0.0, 0x1p-60}, {1.0, std::nextafter(1.0, 2.0)}) == Meeting::none);
}

TEST_CASE("of two squares with a common side exactly one holds a point on it")
{
  const std::vector<Vector2d> left = {{0.0, 0.0}, {0.1, 0.0}, {0.1, 0.3}, {0.0, 0.3}};
  const std::vector<Vector2d> right = {{0.1, 0.0}, {0.2, 0.0}, {0.2, 0.3}, {0.1, 0.3}};
  for (const double y : {0.0, 0.1, 0.299})
    CHECK(contains(left, {0.1, y}) != contains(right, {0.1, y}));
  CHECK(contains(left, {0.05, 0.1}));
  CHECK_FALSE(contains(left, {0.15, 0.1}));
}
