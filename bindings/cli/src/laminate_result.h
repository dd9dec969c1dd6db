// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/design.h>
#include <plate/laminates/constants.h>

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// All constants of a flat laminate.
struct LaminateResult
{
  std::string title;
  Laminate laminate;
  double thickness;      ///< [m]
  double areal_mass;     ///< [kg/m2]
  Matrix6d abd;          ///< [N/m, N, N m]
  Eigen::Matrix2d shear; ///< order (13, 23) [N/m]
  EngineeringConstants membrane;
  EngineeringConstants bending;
  std::optional<Vector6d> thermal;    ///< strain and curvature per kelvin [1/K, 1/(m K)]
  std::optional<Vector6d> swelling;   ///< strain and curvature per fraction of moisture content [-, 1/m]
  std::optional<double> seconds = {}; ///< taken, if the user asked for it [s]
  std::vector<StripStiffness> polar;  ///< of strips cut at 0, 2, ... 358 degrees
};

/// Angle between two entries of LaminateResult::polar [degrees].
inline constexpr int polar_step = 2;

[[nodiscard]] LaminateResult compute_laminate(const LayupDesign& design);

/// First material of the laminate that has no expansion of that kind; empty if all have.
[[nodiscard]] std::string without_expansion(const Laminate& laminate, std::optional<Expansion> Material::*expansion);

} // namespace plate
