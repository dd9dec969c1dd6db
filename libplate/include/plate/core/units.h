// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <numbers>

namespace plate
{

/// An angle; degrees appear only at the edges of the library.
class Angle
{
public:
  constexpr Angle() = default;
  [[nodiscard]] static constexpr Angle degrees(double v) { return Angle(v * std::numbers::pi / 180.0); }
  [[nodiscard]] static constexpr Angle radians(double v) { return Angle(v); }
  [[nodiscard]] constexpr double in_radians() const { return radians_; }
  [[nodiscard]] constexpr double in_degrees() const { return radians_ * 180.0 / std::numbers::pi; }

private:
  explicit constexpr Angle(double radians) : radians_(radians) {}
  double radians_ = 0.0;
};

} // namespace plate
