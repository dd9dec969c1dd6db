// SPDX-License-Identifier: MPL-2.0
// Vibration of simply supported squares, side 1 m.
#include "modal_values.h"
#include "simple_support.h"

#include <plate/core/units.h>
#include <plate/validation/sample_models.h>

#include <cmath>
#include <utility>

namespace plate::validation
{
namespace
{

constexpr double side = 1.0;       // [m]
constexpr double across = 1e9;     // E2 [Pa]
constexpr double density = 1000.0; // [kg/m3]
constexpr int cells = 12;          // along a side

/// The ply of the literature: G12 = G13 = 0.6 E2, G23 = 0.5 E2, nu12 = 0.25.
Material ply_of_ratio(double ratio)
{
  return {.name = "ply",
          .elastic = {.E1 = ratio * across,
                      .E2 = across,
                      .E3 = across,
                      .G12 = 0.6 * across,
                      .G13 = 0.6 * across,
                      .G23 = 0.5 * across,
                      .nu12 = 0.25,
                      .nu13 = 0.25,
                      .nu23 = 0.25},
          .density = density};
}

Model square(const Laminate& laminate)
{
  return plate_model(even_rectangle(side, side, cells, cells, total_thickness(laminate)), laminate);
}

/// Lowest modes as omega a^2 / h sqrt(rho / E2), E1 = 40 E2.
CaseModel laminate(const std::string& name, const std::vector<double>& degrees, double slenderness, NavierEdge edge)
{
  const auto compute = [=](const ReferenceCase& reference)
  {
    const double thickness = side / slenderness;
    const Model model = square(stack(ply_of_ratio(40.0), thickness / static_cast<double>(degrees.size()), degrees));
    const double scale = two_pi * side * side / thickness * std::sqrt(density / across);
    return modal_values(held_system(model, simply_supported(side, side, edge)).system, reference, scale);
  };
  return {.name = name, .compute = compute};
}

/// The lowest mode as omega h sqrt(rho / E2) for several E1 / E2.
///
/// @param slenderness  side over thickness
CaseModel thick_laminate(const std::string& name, const std::vector<double>& degrees, double slenderness = 5.0)
{
  const auto compute = [=](const ReferenceCase&)
  {
    const double thickness = side / slenderness;
    Values values;
    for (const int ratio : {3, 10, 20, 30, 40})
    {
      const Model model = square(stack(ply_of_ratio(ratio), thickness / static_cast<double>(degrees.size()), degrees));
      const System system = held_system(model, simply_supported(side, side, NavierEdge::tangential)).system;
      values["omega_at_ratio_" + std::to_string(ratio)] =
          two_pi * checked_modes(system, 1).frequencies_hz(0) * thickness * std::sqrt(density / across);
    }
    return values;
  };
  return {.name = name, .compute = compute};
}

/// Bending modes of an isotropic square as omega a^2 sqrt(rho h / D), or in Hz.
CaseModel isotropic_square(const std::string& name, double length, double thickness, bool in_hz)
{
  const auto compute = [=](const ReferenceCase& reference)
  {
    const Material steel = isotropic(200e9, 0.3, 8000.0);
    const Model model = plate_model(even_rectangle(length, length, cells, cells, thickness), solid(steel, thickness));
    const double D = steel.elastic.E1 * std::pow(thickness, 3) / (12.0 * (1.0 - 0.3 * 0.3));
    const double lambda = two_pi * length * length * std::sqrt(steel.density * thickness / D);
    return modal_values(held_system(model, bending_only(length, length)).system, reference, in_hz ? 1.0 : lambda);
  };
  return {.name = name, .compute = compute};
}

std::vector<double> repeated(double first, double second, int times)
{
  std::vector<double> degrees;
  for (int i = 0; i < times; ++i)
    degrees.insert(degrees.end(), {first, second});
  return degrees;
}

} // namespace

std::vector<CaseModel> laminated_plates()
{
  constexpr double thin = 100.0;
  const auto cross = NavierEdge::tangential;
  const auto angle = NavierEdge::normal;
  return {laminate("[0/90] square, a/h 100", {0, 90}, thin, cross),
          laminate("[0/90]2 square, a/h 100", {0, 90, 0, 90}, thin, cross),
          laminate("[0/90/90/0] square, a/h 100", {0, 90, 90, 0}, thin, cross),
          laminate("[0/90/0] square, a/h 100", {0, 90, 0}, thin, cross),
          laminate("[30/-30] square, a/h 100", {30, -30}, thin, angle),
          laminate("[45/-45] square, a/h 100", {45, -45}, thin, angle),
          laminate("[45/-45]2 square, a/h 100", repeated(45, -45, 2), thin, angle),
          laminate("[45/-45]4 square, a/h 100", repeated(45, -45, 4), thin, angle),
          laminate("[30/-30]5 square, a/h 100", repeated(30, -30, 5), thin, angle),
          laminate("[45/-45]5 square, a/h 100", repeated(45, -45, 5), thin, angle),
          thick_laminate("3D [0/90] square, a/h 5", {0, 90}),
          thick_laminate("3D [0/90]2 square, a/h 5", {0, 90, 0, 90}),
          thick_laminate("3D [0/90]5 square, a/h 5", repeated(0, 90, 5)),
          thick_laminate("3D [0/90/0] square, a/h 5", {0, 90, 0}),
          thick_laminate("3D [0/90/90/0] square, a/h 5", {0, 90, 90, 0}),
          thick_laminate("3D [0/90] square, a/h 10", {0, 90}, 10.0),
          thick_laminate("3D [0/90/0] square, a/h 10", {0, 90, 0}, 10.0),
          thick_laminate("3D [0/90/90/0] square, a/h 10", {0, 90, 90, 0}, 10.0),
          thick_laminate("3D [0/90] square, a/h 20", {0, 90}, 20.0),
          thick_laminate("3D [0/90/0] square, a/h 20", {0, 90, 0}, 20.0),
          thick_laminate("3D [0/90/90/0] square, a/h 20", {0, 90, 90, 0}, 20.0),
          isotropic_square("3D isotropic square, a/h 20", 1.0, 0.05, false),
          isotropic_square("3D isotropic square, a/h 10", 1.0, 0.1, false),
          isotropic_square("3D isotropic square, a/h 5", 1.0, 0.2, false),
          isotropic_square("thick square, tangential turns held", 10.0, 1.0, true)};
}

} // namespace plate::validation
