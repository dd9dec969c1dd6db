// SPDX-License-Identifier: MPL-2.0
#include "knobs.h"
#include "relative.h"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace plate;
using namespace plate::test;

TEST_CASE("derivatives by parts of a whole plate are those of full solves")
{
  const Model base = whole_plate();
  const std::vector<Knob> knobs = knobs_of_whole_plate();
  ChangedPlate design = plate_with(base, knobs);
  const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 6});
  REQUIRE(result.complete);
  REQUIRE(result.parameters.size() == knobs.size());
  for (std::size_t k = 0; k < knobs.size(); ++k)
  {
    CAPTURE(knobs[k].name);
    CHECK(result.parameters[k].acts);
    CHECK(mismatch(result.parameters[k].slopes_hz, solved_slopes(design, knobs, k, 6)) < 1e-5);
  }
}

TEST_CASE("derivatives of the mass are those of assembled plates")
{
  const Model base = whole_plate();
  const std::vector<Knob> knobs = knobs_of_whole_plate();
  ChangedPlate design = plate_with(base, knobs);
  const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 1});
  for (std::size_t k = 0; k < knobs.size(); ++k)
  {
    CAPTURE(knobs[k].name);
    std::vector<double> up = values_of(knobs);
    std::vector<double> down = up;
    up[k] += 1e-3 * knobs[k].scale;
    down[k] -= 1e-3 * knobs[k].scale;
    const double slope =
        (assemble(design.build(up)).mass - assemble(design.build(down)).mass) / (2e-3 * knobs[k].scale);
    // Mass is a polynomial of second degree in all of these, so only rounding is left.
    CHECK(std::abs(result.parameters[k].mass_slope - slope) * knobs[k].scale < 1e-8 * result.system.mass);
  }
}

TEST_CASE("sum rules: all moduli together, density, size")
{
  // Of one material with fixed Poisson's ratios, K is of first degree in all moduli, M in the density; enlarged in all
  // directions, a body of the same material sounds lower in proportion (dimensional analysis).
  const Model base =
      test::plate_model(arched(0.012), test::solid(test::reference_spruce(), 2.6e-3, 10.0, Grain::carved));
  Model with_bar = base;
  with_bar.bars = {{.material = test::reference_spruce(), .width = 6e-3, .profile = {{-0.11, 0.11}, {9e-3, 5e-3}}}};
  using Modulus = double OrthotropicElastic::*;
  std::vector<Knob> knobs;
  const OrthotropicElastic spruce = test::reference_spruce().elastic;
  for (const Modulus modulus : {&OrthotropicElastic::E1, &OrthotropicElastic::E2, &OrthotropicElastic::E3,
                                &OrthotropicElastic::G12, &OrthotropicElastic::G13, &OrthotropicElastic::G23})
    knobs.push_back({"modulus", spruce.*modulus, spruce.*modulus,
                     [modulus](double v, Model& m)
                     {
                       first_ply(m).material.elastic.*modulus = v;
                       m.bars[0].material.elastic.*modulus = v;
                     }});
  knobs.push_back({"density", 400.0, 400.0,
                   [](double v, Model& m)
                   {
                     first_ply(m).material.density = v;
                     m.bars[0].material.density = v;
                   }});
  knobs.push_back({"size", 1.0, 1.0,
                   [](double v, Model& m)
                   {
                     for (Eigen::Vector3d& node : m.mesh.nodes)
                       node *= v;
                     for (double& t : m.mesh.thickness)
                       t *= v;
                     for (double& s : m.mesh.bars[0].station)
                       s *= v;
                     m.bars[0].width *= v;
                     for (double& s : m.bars[0].profile.station)
                       s *= v;
                     for (double& h : m.bars[0].profile.height)
                       h *= v;
                   }});
  ChangedPlate design = plate_with(with_bar, knobs);
  const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 8});
  const Eigen::VectorXd& f = result.modes.frequencies_hz;
  Eigen::VectorXd by_moduli = Eigen::VectorXd::Zero(8);
  for (std::size_t k = 0; k < 6; ++k)
    by_moduli += knobs[k].value * result.parameters[k].slopes_hz;
  CHECK(mismatch(by_moduli, 0.5 * f) < 1e-6);
  CHECK(mismatch(400.0 * result.parameters[6].slopes_hz, -0.5 * f) < 1e-6);
  CHECK(mismatch(result.parameters[7].slopes_hz, -f) < 1e-6);
  CHECK(400.0 * result.parameters[6].mass_slope == test::relative(result.system.mass, 1e-8));
  CHECK(result.parameters[7].mass_slope == test::relative(3.0 * result.system.mass, 1e-6));
}

TEST_CASE("a thin flat plate sounds higher in proportion to its thickness")
{
  // Kirchhoff: f ~ h. Shear and rotary inertia take off a part that grows with (h/wavelength)^2: from full thickness to
  // a half it falls to a quarter.
  const auto shortfall = [](double thickness)
  {
    const Material wood = test::isotropic(10e9, 0.3, 500.0);
    const std::vector<Knob> knobs = {{"thickness", thickness, thickness,
                                      [](double v, Model& m) { m.mesh.thickness.assign(m.mesh.thickness.size(), v); }}};
    ChangedPlate design =
        plate_with(test::plate_model(test::rectangle(0.3, 0.2, 6, 4, thickness), test::solid(wood, thickness)), knobs);
    const SensitivityResult result = sensitivities(design, parameters_of(knobs), {.num_modes = 4});
    const Eigen::VectorXd part = thickness * result.parameters[0].slopes_hz.cwiseQuotient(result.modes.frequencies_hz);
    return Eigen::VectorXd(1.0 - part.array());
  };
  const Eigen::VectorXd thick = shortfall(1e-3);
  const Eigen::VectorXd thin = shortfall(0.5e-3);
  for (Eigen::Index i = 0; i < 4; ++i)
  {
    CHECK(thick(i) > 0.0);
    CHECK(thick(i) < 5e-3);
    CHECK(thin(i) < thick(i));
  }
}
