// SPDX-License-Identifier: MPL-2.0
// Deflection of plates under load.
#include "case_models.h"
#include "literature_plies.h"
#include "simple_support.h"

#include <plate/validation/sample_models.h>

#include <cmath>
#include <numbers>

namespace plate::validation
{
namespace
{

constexpr double density = 1000.0; // any: loads are found through the mass

/// Deflection at a point under a force per area along z [m].
double deflection_at(const Model& model, const HoldRule& rule, const std::function<double(double, double)>& pressure,
                     const Eigen::Vector3d& point)
{
  const auto force = [&](const Eigen::Vector3d& at) { return Eigen::Vector3d(0.0, 0.0, pressure(at.x(), at.y())); };
  const Eigen::Matrix3Xd u = deflection(held_system(model, rule), area_load(model, force));
  return u(2, static_cast<Eigen::Index>(node_at(model, point)));
}

/// 100 E2 h^3 w / (q a^4) in the middle of a square under a double sine, for several a/h.
CaseModel sine_load(const std::string& name, const std::function<Laminate(double thickness)>& laminate)
{
  const auto compute = [=](const ReferenceCase& reference)
  {
    Values values;
    for (const ReferenceValue& value : reference.values)
    {
      const double slenderness = std::stod(value.quantity.substr(value.quantity.rfind('_') + 1)); // "w_at_a/h_20"
      const double thickness = 1.0 / slenderness;
      const Model model = plate_model(even_rectangle(1.0, 1.0, 12, 12, thickness), laminate(thickness));
      const auto pressure = [](double x, double y)
      { return std::cos(std::numbers::pi * x) * std::cos(std::numbers::pi * y); };
      const double w = deflection_at(model, simply_supported(1.0, 1.0, NavierEdge::tangential), pressure, {0, 0, 0});
      values[value.quantity] = 100.0 * pagano_ply().elastic.E2 * std::pow(thickness, 3) * w;
    }
    return values;
  };
  return {.name = name, .compute = compute};
}

CaseModel sine_load_on(const std::string& name, const std::vector<double>& degrees)
{
  return sine_load(name, [degrees](double thickness)
                   { return stack(pagano_ply(), thickness / static_cast<double>(degrees.size()), degrees); });
}

/// Square of 10 in, faces 0.028 in, core 0.75 in, 100 psi.
Values sandwich_square(const ReferenceCase& reference)
{
  constexpr double inch = 0.0254;
  constexpr double psi = 6894.757;
  const Material face = {.name = "face",
                         .elastic = {.E1 = 1e7 * psi,
                                     .E2 = 0.4e7 * psi,
                                     .E3 = 0.4e7 * psi,
                                     .G12 = 0.1875e7 * psi,
                                     .G13 = 0.1875e7 * psi,
                                     .G23 = 0.1875e7 * psi,
                                     .nu12 = 0.3,
                                     .nu13 = 0.3,
                                     .nu23 = 0.3},
                         .density = density};
  const Material core = {.name = "core",
                         .elastic = {.E1 = 10.0 * psi,
                                     .E2 = 10.0 * psi,
                                     .E3 = 1e5 * psi,
                                     .G12 = 10.0 * psi,
                                     .G13 = 3e4 * psi,
                                     .G23 = 1.2e4 * psi,
                                     .nu12 = 0.0,
                                     .nu13 = 0.0,
                                     .nu23 = 0.0},
                         .density = density};
  const Ply skin = {.material = face, .thickness = 0.028 * inch};
  const Laminate laminate = {{skin, {.material = core, .thickness = 0.75 * inch}, skin}};
  const double side = 10.0 * inch;
  const Model model = plate_model(even_rectangle(side, side, 14, 14, total_thickness(laminate)), laminate);
  const double w = deflection_at(model, simply_supported(side, side, NavierEdge::tangential),
                                 [=](double, double) { return 100.0 * psi; }, {0, 0, 0});
  return {{reference.values.front().quantity, w / inch}};
}

/// 4 m x 2 m x 10 mm, fibres along x, 120 Pa.
Values unidirectional_rectangle(const ReferenceCase&)
{
  const Material ply = {.name = "carbon/epoxy",
                        .elastic = {.E1 = 133.86e9,
                                    .E2 = 7.706e9,
                                    .E3 = 7.706e9,
                                    .G12 = 4.306e9,
                                    .G13 = 4.306e9,
                                    .G23 = 2.76e9,
                                    .nu12 = 0.301,
                                    .nu13 = 0.301,
                                    .nu23 = 0.396},
                        .density = density};
  const Model model = plate_model(even_rectangle(4.0, 2.0, 20, 10, 10e-3), solid(ply, 10e-3));
  const double w = deflection_at(model, simply_supported(4.0, 2.0, NavierEdge::tangential),
                                 [](double, double) { return 120.0; }, {0, 0, 0});
  return {{"deflection_mm", 1e3 * w}};
}

constexpr double thin = 2e-3; // of a side of 1 m

Model thin_rectangle(double width)
{
  constexpr int cells = 20; // to a metre
  return plate_model(even_rectangle(1.0, width, cells, static_cast<int>(cells * width), thin),
                     solid(isotropic(200e9, 0.3, density), thin));
}

double thin_rigidity()
{
  return 200e9 * std::pow(thin, 3) / (12.0 * (1.0 - 0.3 * 0.3));
}

HoldRule clamped(double width)
{
  return [rule = simply_supported(1.0, width, NavierEdge::tangential)](std::size_t node, const Eigen::Vector3d& at)
  {
    Hold hold = rule(node, at);
    if (hold.held[2])
      hold.held = {true, true, true, true, true};
    return hold;
  };
}

/// w D / (q a^4) in the middle of thin rectangles, a the short side.
Values uniform_load(const ReferenceCase&)
{
  const auto coefficient = [](double width, const HoldRule& rule) {
    return thin_rigidity() * deflection_at(thin_rectangle(width), rule, [](double, double) { return 1.0; }, {0, 0, 0});
  };
  return {{"hinged_square", coefficient(1.0, simply_supported(1.0, 1.0, NavierEdge::tangential))},
          {"hinged_1_to_5", coefficient(5.0, simply_supported(1.0, 5.0, NavierEdge::tangential))},
          {"clamped_square", coefficient(1.0, clamped(1.0))},
          {"clamped_1_to_5", coefficient(5.0, clamped(5.0))}};
}

/// w D / (P a^2) under a force in the middle of thin rectangles.
Values central_force(const ReferenceCase&)
{
  const auto coefficient = [](double width)
  {
    const Model model = thin_rectangle(width);
    const std::size_t middle = node_at(model, {0, 0, 0});
    const HeldSystem held = held_system(model, simply_supported(1.0, width, NavierEdge::tangential));
    Eigen::VectorXd load = Eigen::VectorXd::Zero(held.to_model.rows());
    add_force(load, middle, {0, 0, 1.0});
    return thin_rigidity() * deflection(held, load)(2, static_cast<Eigen::Index>(middle));
  };
  return {{"hinged_square", coefficient(1.0)}, {"hinged_1_to_5", coefficient(5.0)}};
}

} // namespace

std::vector<CaseModel> plate_bending()
{
  return {{.name = "thin rectangles under uniform load", .compute = uniform_load},
          {.name = "thin rectangles under a central force", .compute = central_force},
          {.name = "carbon rectangle under uniform load", .compute = unidirectional_rectangle},
          sine_load_on("3D [0/90/0] square, sine load", {0, 90, 0}),
          sine_load_on("3D [0/90/90/0] square, sine load", {0, 90, 90, 0}),
          sine_load_on("3D [0/90] square, sine load", {0, 90}),
          sine_load("3D sandwich square, sine load", pagano_sandwich),
          {.name = "sandwich square under uniform load", .compute = sandwich_square},
          {.name = "3D sandwich square under uniform load", .compute = sandwich_square}};
}

} // namespace plate::validation
