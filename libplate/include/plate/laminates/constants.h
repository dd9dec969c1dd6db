// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/laminates/section.h>

#include <Eigen/Core>

#include <optional>

namespace plate
{

using Matrix6d = Eigen::Matrix<double, 6, 6>;
using Vector6d = Eigen::Matrix<double, 6, 1>;

/// Stiffness [A B; B D] of a flat section: (N, M) from (strain, curvature) [N/m, N, N m].
[[nodiscard]] Matrix6d abd_matrix(const SectionStiffness& section);

/// Constants of a homogeneous plate of the same thickness that stretches, or bends, as the laminate does.
struct EngineeringConstants
{
  double Ex;   ///< [Pa]
  double Ey;   ///< [Pa]
  double Gxy;  ///< [Pa]
  double nuxy; ///< contraction along y from stress along x [-]
};

/// Constants of stretching for forces in the reference surface, the laminate free to bend.
///
/// @param thickness  total [m]
/// @source [Jones1999] sec. 4.3, from the inverse of the whole stiffness; pinned by
/// tests/unit/laminates/constants_test.cpp
[[nodiscard]] EngineeringConstants membrane_constants(const Matrix6d& abd, double thickness);

/// Constants of bending for moments, the laminate free to stretch: E = 12 / (h^3 d).
[[nodiscard]] EngineeringConstants bending_constants(const Matrix6d& abd, double thickness);

/// Stiffness of a strip cut at an angle from x, free at its sides.
struct StripStiffness
{
  double modulus; ///< force over width, thickness and strain [Pa]
  double bending; ///< moment over width and curvature [N m]
};
[[nodiscard]] StripStiffness strip_stiffness(const Matrix6d& abd, double thickness, Angle angle);

/// Free strain (11, 22, 12) of a ply by itself, in the axes of the laminate [as the expansion].
[[nodiscard]] Eigen::Vector3d free_strain(Angle angle, const Expansion& expansion);

/// Strain (11, 22, 12) and curvature of the free laminate per kelvin, or per unit of moisture content as a fraction.
///
/// @param expansion  Material::thermal or Material::swelling
/// @return (6) [1/K, 1/(m K); or per fraction of moisture]; nothing if a ply has no such data
/// @source [Jones1999] sec. 4.5; pinned by tests/unit/laminates/constants_test.cpp
[[nodiscard]] std::optional<Vector6d> free_expansion(const Laminate& laminate,
                                                     std::optional<Expansion> Material::*expansion);

/// sqrt(12 D / m^3), by which a plate turns force into sound: sqrt(E / rho^3) of a homogeneous one [m4/(kg s)].
///
/// @param bending  D of a strip [N m]
/// @param areal    mass per area [kg/m2]
[[nodiscard]] double radiation_ratio(double bending, double areal);

} // namespace plate
