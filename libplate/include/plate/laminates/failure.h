// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/laminates/ply_stress.h>
#include <plate/materials/material.h>

#include <Eigen/Core>

#include <optional>
#include <string_view>

namespace plate
{

/// What gives way first.
enum class FailureMode
{
  tension_along,
  compression_along,
  tension_across,
  compression_across,
  shear,         ///< in the plane of the ply
  shear_through, ///< through the thickness: interlaminar, core, rolling shear of wood
  combined       ///< of stresses together (Tsai-Wu)
};

/// "tension across", ...
[[nodiscard]] std::string_view words(FailureMode mode);

/// How many times the load may grow until a ply fails: at 1 it fails under the load itself.
struct StrengthMargin
{
  double factor; ///< [-]; infinity without stress, 0 where the stress that is held fixed fails alone
  FailureMode mode;
};

/// Stress in the plane of a ply in its axes, and the part of it that does not grow with the load, e.g. of the cure.
struct PlaneStress
{
  Eigen::Vector3d load;                           ///< (11, 22, 12) [Pa]
  Eigen::Vector3d held = Eigen::Vector3d::Zero(); ///< (11, 22, 12) [Pa]
};

/// Factor R on the load at which held + R load meets the Tsai-Wu surface, F12 = -0.5 sqrt(F11 F22).
///
/// @source [TsaiHahn1980] ch. 7; pinned by tests/unit/laminates/failure_test.cpp
[[nodiscard]] double tsai_wu_factor(const Strength& strength, const PlaneStress& stress);

/// Least factor at which held + R load meets the strength of one component.
[[nodiscard]] StrengthMargin maximum_stress_margin(const Strength& strength, const PlaneStress& stress);

/// Margin of a material at a point: of wood by maximum stress along and across the grain, of plies by the lesser of
/// Tsai-Wu and maximum stress; of both through the thickness as well, as far as their strengths are known.
///
/// @param load,held  stress in the axes of the material [Pa]
/// @return nothing if the material has no strengths at all
[[nodiscard]] std::optional<StrengthMargin> strength_margin(const Material& material, const MaterialComponents& load,
                                                            const MaterialComponents& held);

} // namespace plate
