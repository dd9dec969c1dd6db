// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <array>

namespace plate
{

/// B-splines of one variable on equal intervals.
class SplineBasis
{
public:
  static constexpr int greatest_degree = 5;

  enum class Ends
  {
    open,   ///< knots run on in equal steps: the splines of a closed curve or of a surface
    clamped ///< knots gather at both ends: the first and the last coefficient are the values there
  };

  SplineBasis(int degree, double low, double high, int intervals, Ends ends);

  [[nodiscard]] int size() const { return intervals_ + degree_; } ///< number of splines
  [[nodiscard]] int degree() const { return degree_; }
  [[nodiscard]] int intervals() const { return intervals_; }
  [[nodiscard]] double low() const { return low_; }
  [[nodiscard]] double step() const { return step_; } ///< length of an interval

  /// The splines that do not vanish at a place: numbers first ... first + degree.
  struct Local
  {
    int first;
    std::array<double, greatest_degree + 1> values;
  };

  /// Values or a derivative at x, which is moved to the nearer end if it lies outside.
  ///
  /// @param derivative  0 for the values; at most the degree
  [[nodiscard]] Local at(double x, int derivative) const;

private:
  [[nodiscard]] double knot(int i) const;

  int degree_;
  double low_;
  double step_;
  int intervals_;
  Ends ends_;
};

} // namespace plate
