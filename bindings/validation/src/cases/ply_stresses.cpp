// SPDX-License-Identifier: MPL-2.0
// Stresses and strength of laminates.
#include "case_models.h"
#include "literature_plies.h"
#include "simple_support.h"

#include <plate/assembly/loads.h>
#include <plate/elements/shell_strains.h>
#include <plate/laminates/constants.h>
#include <plate/laminates/failure.h>
#include <plate/mesh/locate.h>
#include <plate/solvers/statics.h>
#include <plate/validation/sample_models.h>

#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace plate::validation
{
namespace
{

/// A square of side 1 m under a double sine of 1 Pa, its largest value in the middle.
class SineSquare
{
public:
  explicit SineSquare(const Laminate& laminate)
      : model_(plate_model(even_rectangle(1.0, 1.0, 12, 12, total_thickness(laminate)), laminate)),
        dofs_(number_unknowns(model_))
  {
    const HeldSystem held = held_system(model_, simply_supported(1.0, 1.0, NavierEdge::tangential));
    NodalUnknowns forces = no_load(model_.mesh);
    add_surface_load(
        model_,
        [](const Eigen::Vector3d& at) {
          return Eigen::Vector3d(0.0, 0.0, std::cos(std::numbers::pi * at.x()) * std::cos(std::numbers::pi * at.y()));
        },
        forces);
    const StaticResult result = solve_statics(held.system, held.to_model.transpose() * on_unknowns(dofs_, forces));
    u_ = at_nodes(dofs_, held.to_model * result.x);
  }

  /// Stress (11, 22, 33, 23, 13, 12) in the axes of a ply, counted from the inside.
  [[nodiscard]] MaterialComponents stress(const Eigen::Vector2d& at, std::size_t ply, double z) const
  {
    const MeshPoint place = locate(model_.mesh, at).value();
    const ElementInput element = element_input(model_, place.triangle, {});
    const std::array<Eigen::Vector2d, 1> natural = {Eigen::Vector2d(place.xi, place.eta)};
    const ShellStrainPoint point = shell_strains(element.nodes, model_.material, element.parts, natural,
                                                 of_triangle(model_.mesh, u_, place.triangle))
                                       .front();
    return PlyStresses(point.plies, point.frame, model_.material.axes).stress(ply, z, point.strains.front());
  }

private:
  Model model_;
  DofMap dofs_;
  NodalUnknowns u_;
};

/// Stresses as the literature scales them, for the a/h at the end of each quantity's name.
CaseModel sine_stresses(const std::string& name, const std::function<Laminate(double thickness)>& laminate,
                        std::size_t across_ply)
{
  const auto compute = [=](const ReferenceCase& reference)
  {
    Values values;
    for (const ReferenceValue& value : reference.values)
    {
      const double slenderness = std::stod(value.quantity.substr(value.quantity.rfind('_') + 1));
      const double h = 1.0 / slenderness;
      const Laminate stack = laminate(h);
      const SineSquare square(stack);
      const std::size_t top = stack.plies.size() - 1;
      double across_top = -0.5 * h;
      for (std::size_t i = 0; i <= across_ply; ++i)
        across_top += stack.plies[i].thickness;
      const std::string kind = value.quantity.substr(0, value.quantity.find("_at"));
      const auto in_plane = [&](const Eigen::Vector2d& at, std::size_t ply, double z, int component)
      { return square.stress(at, ply, z)(component) * h * h; };
      if (kind == "sx")
        values[value.quantity] = in_plane({0.0, 0.0}, top, 0.5 * h, 0);
      else if (kind == "sy") // of a ply at 90 degrees along its fibre
        values[value.quantity] =
            in_plane({0.0, 0.0}, across_ply, across_top, stack.plies[across_ply].angle.in_radians() > 0.0 ? 0 : 1);
      else if (kind == "txy") // at a corner
        values[value.quantity] = in_plane({-0.5, -0.5}, top, 0.5 * h, 5);
    }
    return values;
  };
  return {.name = name, .compute = compute};
}

CaseModel sine_stresses_of(const std::string& name, const std::vector<double>& degrees, std::size_t across_ply)
{
  return sine_stresses(
      name, [degrees](double h) { return stack(pagano_ply(), h / static_cast<double>(degrees.size()), degrees); },
      across_ply);
}

/// Strengths of the carbon/epoxy of textbook examples, [Kaw2006] table 2.1.
Strength carbon_epoxy_strength()
{
  return {.Xt = 1500e6, .Xc = 1500e6, .Yt = 40e6, .Yc = 246e6, .S = 68e6};
}

Values one_ply_state(const ReferenceCase&)
{
  const PlaneStress stress = {.load = {300e6, 15e6, 25e6}};
  return {{"tsai_wu", tsai_wu_factor(carbon_epoxy_strength(), stress)},
          {"maximum_stress", maximum_stress_margin(carbon_epoxy_strength(), stress).factor}};
}

/// Turned by 60 degrees under (2, -3, 4) MPa in x, y.
Values turned_ply(const ReferenceCase&)
{
  const double c = 0.5;
  const double s = std::sqrt(0.75);
  const Eigen::Vector3d xy(2e6, -3e6, 4e6);
  Eigen::Matrix3d T;
  T << c * c, s * s, 2.0 * c * s, s * s, c * c, -2.0 * c * s, -c * s, c * s, c * c - s * s;
  const PlaneStress stress = {.load = T * xy};
  return {{"tsai_wu", tsai_wu_factor(carbon_epoxy_strength(), stress)},
          {"maximum_stress", maximum_stress_margin(carbon_epoxy_strength(), stress).factor}};
}

/// Least factors over all plies of [0/45/-45/90]s of 0.125 mm.
struct LeastFactors
{
  double tsai_wu = std::numeric_limits<double>::infinity();
  double maximum_stress = std::numeric_limits<double>::infinity();
};

/// @param resultants  (N, M) [N/m, N]
/// @param cure        change of temperature since the cure [K]
LeastFactors least_factors(const Vector6d& resultants, double cure)
{
  Material ply = carbon_epoxy();
  ply.thermal = Expansion{.along = 0.02e-6, .across = 22.5e-6};
  const Laminate laminate = stack(ply, 0.125e-3, {0, 45, -45, 90, 90, -45, 45, 0});
  const Eigen::Matrix3d frame = Eigen::Matrix3d::Identity();
  std::vector<PlacedPly> plies;
  place_plies(laminate, total_thickness(laminate), plies);
  const Vector6d strain = abd_matrix(section_stiffness(plies, frame, {})).inverse() * resultants;
  SectionStrains strains;
  strains.in_plane << strain.head<3>(), strain.tail<3>(), Eigen::Vector3d::Zero();
  const PlyStresses stresses(plies, frame, {});
  LeastFactors least;
  for (std::size_t i = 0; i < plies.size(); ++i)
    for (const double z : {plies[i].bottom, plies[i].top})
    {
      const MaterialComponents load = stresses.stress(i, z, strains);
      const MaterialComponents held = stresses.cure_stress(i, z, cure);
      const PlaneStress stress = {.load = {load(0), load(1), load(5)}, .held = {held(0), held(1), held(5)}};
      least.tsai_wu = std::min(least.tsai_wu, tsai_wu_factor(carbon_epoxy_strength(), stress));
      least.maximum_stress =
          std::min(least.maximum_stress, maximum_stress_margin(carbon_epoxy_strength(), stress).factor);
    }
  return least;
}

Vector6d resultant_along(int component, double value)
{
  Vector6d resultants = Vector6d::Zero();
  resultants(component) = value;
  return resultants;
}

Values loaded_laminate(const ReferenceCase&)
{
  const LeastFactors stretched = least_factors(resultant_along(0, 100e3), 0.0);
  const LeastFactors bent = least_factors(resultant_along(3, 10.0), 0.0);
  const LeastFactors cured = least_factors(resultant_along(0, 100e3), -100.0);
  return {{"stretched_tsai_wu", stretched.tsai_wu},
          {"stretched_maximum_stress", stretched.maximum_stress},
          {"bent_tsai_wu", bent.tsai_wu},
          {"bent_maximum_stress", bent.maximum_stress},
          {"stretched_after_cure", cured.tsai_wu}};
}

} // namespace

std::vector<CaseModel> ply_stresses()
{
  return {sine_stresses_of("stresses of [0/90/0], sine load", {0, 90, 0}, 1),
          sine_stresses_of("stresses of [0/90/90/0], sine load", {0, 90, 90, 0}, 2),
          sine_stresses("stresses of a sandwich, sine load", pagano_sandwich, 2),
          {.name = "strength of a ply", .compute = one_ply_state},
          {.name = "strength of a turned ply", .compute = turned_ply},
          {.name = "strength of [0/45/-45/90]s", .compute = loaded_laminate}};
}

} // namespace plate::validation
