// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <array>

namespace plate
{

/// A quadrature point of the unit triangle (0,0), (1,0), (0,1).
struct TrianglePoint
{
  double xi;     ///< first natural coordinate [-]
  double eta;    ///< second natural coordinate [-]
  double weight; ///< the weights of a rule add up to the area 1/2 [-]
};

/// Twelve points, exact for polynomials of degree six: full integration of the flat cubic triangle.
///
/// @source [Dunavant1985] table II, p = 6; pinned by tests/unit/elements/cubic_triangle_test.cpp
inline constexpr int num_triangle_points = 12;
[[nodiscard]] const std::array<TrianglePoint, num_triangle_points>& triangle_points();

/// Sixteen points, exact for polynomials of degree eight: full integration of the flat quartic triangle.
///
/// @source [Dunavant1985] table II, p = 8; pinned by tests/unit/elements/enriched_triangle_test.cpp
inline constexpr int num_quartic_triangle_points = 16;
[[nodiscard]] const std::array<TrianglePoint, num_quartic_triangle_points>& quartic_triangle_points();

/// The twelve points in each of sixteen equal sub-triangles, for integrands that jump within the triangle; sub-triangle
/// after sub-triangle.
inline constexpr int num_fine_triangle_points = 16 * num_triangle_points;
[[nodiscard]] const std::array<TrianglePoint, num_fine_triangle_points>& fine_triangle_points();

} // namespace plate
