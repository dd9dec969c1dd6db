// SPDX-License-Identifier: MPL-2.0
#include <plate/validation/sample_models.h>

#include <utility>

namespace plate::validation
{

Material isotropic(double E, double nu, double density)
{
  const double G = E / (2.0 * (1.0 + nu));
  return {.name = "isotropic",
          .elastic = {.E1 = E, .E2 = E, .E3 = E, .G12 = G, .G13 = G, .G23 = G, .nu12 = nu, .nu13 = nu, .nu23 = nu},
          .density = density};
}

Material carbon_epoxy()
{
  return {.name = "carbon/epoxy",
          .elastic = {.E1 = 181e9,
                      .E2 = 10.3e9,
                      .E3 = 10.3e9,
                      .G12 = 7.17e9,
                      .G13 = 7.17e9,
                      .G23 = 3.78e9,
                      .nu12 = 0.28,
                      .nu13 = 0.28,
                      .nu23 = 0.36},
          .density = 1600.0};
}

Material quarter_cut_spruce()
{
  return {.name = "quarter-cut spruce",
          .elastic = {.E1 = 11.0e9,
                      .E2 = 0.85e9,
                      .E3 = 0.47e9,
                      .G12 = 0.70e9,
                      .G13 = 0.65e9,
                      .G23 = 0.035e9,
                      .nu12 = 0.37,
                      .nu13 = 0.47,
                      .nu23 = 0.43},
          .density = 420.0};
}

Material reference_spruce()
{
  return {.name = "spruce",
          .elastic = {.E1 = 11000e6,
                      .E2 = 858e6,
                      .E3 = 473e6,
                      .G12 = 704e6,
                      .G13 = 671e6,
                      .G23 = 33e6,
                      .nu12 = 0.372,
                      .nu13 = 0.467,
                      .nu23 = 0.435},
          .density = 400.0};
}

Material reference_carbon()
{
  return {.name = "carbon",
          .elastic = {.E1 = 142000e6,
                      .E2 = 10300e6,
                      .E3 = 10300e6,
                      .G12 = 7200e6,
                      .G13 = 7200e6,
                      .G23 = 3800e6,
                      .nu12 = 0.27,
                      .nu13 = 0.27,
                      .nu23 = 0.40},
          .density = 1580.0};
}

Material reference_balsa()
{
  return {.name = "balsa",
          .elastic = {.E1 = 60e6,
                      .E2 = 60e6,
                      .E3 = 3000e6,
                      .G12 = 30e6,
                      .G13 = 110e6,
                      .G23 = 110e6,
                      .nu12 = 0.3,
                      .nu13 = 0.0005,
                      .nu23 = 0.0005},
          .density = 100.0,
          .core = true};
}

Laminate solid(const Material& material, double thickness, double degrees, Grain grain)
{
  return {{{.material = material, .thickness = thickness, .angle = Angle::degrees(degrees), .grain = grain}}};
}

Laminate stack(const Material& material, double ply_thickness, const std::vector<double>& degrees)
{
  Laminate laminate;
  for (const double angle : degrees)
    laminate.plies.push_back({.material = material, .thickness = ply_thickness, .angle = Angle::degrees(angle)});
  return laminate;
}

Model plate_model(ShellMesh mesh, const Laminate& laminate)
{
  Model model;
  model.mesh = std::move(mesh);
  model.material.laminate = laminate;
  return model;
}

void support_all_sides(Model& model, EdgeSupport support)
{
  for (const char* side : {"x-", "x+", "y-", "y+"})
    model.supports.push_back({.group = side, .support = support});
}

} // namespace plate::validation
