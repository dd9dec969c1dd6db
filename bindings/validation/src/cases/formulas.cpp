// SPDX-License-Identifier: MPL-2.0
// Closed formulas: laminates, wood in moist air, damping.
#include "modal_values.h"
#include "simple_support.h"

#include <plate/laminates/constants.h>
#include <plate/materials/moisture.h>
#include <plate/post/mode_loss.h>
#include <plate/validation/sample_models.h>

#include <Eigen/LU>

#include <array>

namespace plate::validation
{
namespace
{

constexpr double ply = 0.125e-3; // [m]

Matrix6d abd_of(const Laminate& laminate)
{
  return abd_matrix(section_stiffness(laminate, total_thickness(laminate), Eigen::Matrix3d::Identity(), {}));
}

/// A, B and D by name: "A11_N_m", "B16_N", "D66_N_m".
Values abd_values(const Matrix6d& abd)
{
  constexpr std::array<const char*, 3> index = {"1", "2", "6"};
  Values values;
  for (Eigen::Index i = 0; i < 3; ++i)
    for (Eigen::Index j = i; j < 3; ++j)
    {
      const std::string name = std::string(index[static_cast<std::size_t>(i)]) + index[static_cast<std::size_t>(j)];
      values["A" + name + "_N_m"] = abd(i, j);
      values["B" + name + "_N"] = abd(i, 3 + j);
      values["D" + name + "_N_m"] = abd(3 + i, 3 + j);
    }
  return values;
}

CaseModel abd_of_stack(const std::string& name, double thickness, const std::vector<double>& degrees)
{
  return {.name = name, .compute = [=](const ReferenceCase&) {
            return abd_values(abd_of(stack(carbon_epoxy(), thickness, degrees)));
          }};
}

/// Strains and curvatures of [0/30/-45], plies of 5 mm, under Nx = Ny = 1000 N/m.
Values stretched_laminate(const ReferenceCase&)
{
  Vector6d forces = Vector6d::Zero();
  forces.head<2>().setConstant(1000.0);
  const Vector6d strains = abd_of(stack(carbon_epoxy(), 5e-3, {0, 30, -45})).partialPivLu().solve(forces);
  return {{"strain_x", strains(0)},        {"strain_y", strains(1)},        {"strain_xy", strains(2)},
          {"curvature_x_1_m", strains(3)}, {"curvature_y_1_m", strains(4)}, {"curvature_xy_1_m", strains(5)}};
}

Values quasi_isotropic_constants(const ReferenceCase&)
{
  const Laminate laminate = stack(carbon_epoxy(), ply, {0, 45, -45, 90, 90, -45, 45, 0});
  const EngineeringConstants c = membrane_constants(abd_of(laminate), total_thickness(laminate));
  return {{"Ex_GPa", 1e-9 * c.Ex}, {"Ey_GPa", 1e-9 * c.Ey}, {"Gxy_GPa", 1e-9 * c.Gxy}, {"nuxy", c.nuxy}};
}

Values moisture_content(const ReferenceCase&)
{
  return {{"at_20C_50", equilibrium_moisture({.temperature = 20.0, .humidity = 0.50})},
          {"at_20C_65", equilibrium_moisture({.temperature = 20.0, .humidity = 0.65})}};
}

Values strength_of_dry_ash(const ReferenceCase&)
{
  return {{"rupture_kPa", at_moisture(103000.0, 66000.0, 0.08, 0.24)}};
}

Values stiffness_of_dry_spruce(const ReferenceCase&)
{
  return {{"engelmann_MPa", at_moisture(8900.0, 7100.0, 0.06, 0.25)},
          {"sitka_MPa", at_moisture(9900.0, 7900.0, 0.06, 0.27)}};
}

/// Basic gravity 0.40, from 12 % moisture.
Values density_of_moist_wood(const ReferenceCase&)
{
  return {{"dry_kg_m3", density_at_moisture(478.43, 0.12, 0.0)},
          {"at_30_percent_kg_m3", density_at_moisture(478.43, 0.12, 0.30)}};
}

/// Spruce 350 x 200 x 2.8 mm, simply supported, thin: share of in-plane shear in the energy of the first mode.
Values share_of_shear(const ReferenceCase&)
{
  constexpr double loss = 0.018;
  constexpr double thinner = 10.0; // frequencies of thin plates are proportional to the thickness
  constexpr double thickness = 2.8e-3 / thinner;
  const Material spruce = {.name = "spruce",
                           .elastic = {.E1 = 12e9,
                                       .E2 = 0.8e9,
                                       .E3 = 0.8e9,
                                       .G12 = 0.75e9,
                                       .G13 = 0.7e9,
                                       .G23 = 0.04e9,
                                       .nu12 = 0.38,
                                       .nu13 = 0.0,
                                       .nu23 = 0.0},
                           .density = 420.0,
                           .loss = {.G12 = loss}};
  const Model model = plate_model(even_rectangle(0.35, 0.2, 30, 18, thickness), solid(spruce, thickness));
  const HeldSystem held = held_system(model, bending_only(0.35, 0.2));
  const ModalResult modes = checked_modes(held.system, 1);
  const Eigen::MatrixXd shapes = held.to_model * modes.shapes;
  return {{"f1_hz", thinner * modes.frequencies_hz(0)},
          {"share_of_shear", mode_losses(model, number_unknowns(model), shapes)(0) / loss}};
}

} // namespace

std::vector<CaseModel> formulas()
{
  return {abd_of_stack("A, B, D of [0/30/-45]", 5e-3, {0, 30, -45}),
          {.name = "[0/30/-45] under Nx = Ny", .compute = stretched_laminate},
          abd_of_stack("A, D of [0/45/-45/90]s", ply, {0, 45, -45, 90, 90, -45, 45, 0}),
          {.name = "constants of [0/45/-45/90]s", .compute = quasi_isotropic_constants},
          abd_of_stack("A, B, D of [0/90]", ply, {0, 90}),
          abd_of_stack("A, B, D of [45/-45]", ply, {45, -45}),
          {.name = "moisture of wood in air", .compute = moisture_content},
          {.name = "strength of ash at 8 % moisture", .compute = strength_of_dry_ash},
          {.name = "stiffness of spruce at 6 % moisture", .compute = stiffness_of_dry_spruce},
          {.name = "density of moist wood", .compute = density_of_moist_wood},
          {.name = "share of in-plane shear in a mode", .compute = share_of_shear}};
}

} // namespace plate::validation
