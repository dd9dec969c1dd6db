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

// What numbers of the library are multiplied with where people read them.
inline constexpr double grams = 1e3;        ///< per kg
inline constexpr double millimetres = 1e3;  ///< per m
inline constexpr double megapascals = 1e-6; ///< per Pa
inline constexpr double gigapascals = 1e-9; ///< per Pa
inline constexpr double percent = 100.0;    ///< per one

inline constexpr double two_pi = 2.0 * std::numbers::pi; ///< angular frequency over frequency

} // namespace plate
