// SPDX-License-Identifier: MPL-2.0
#include "changed_plate.h"
#include "relative.h"

#include <plate/core/error.h>
#include <plate/post/mode_compare.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <thread>

using namespace plate;
using namespace plate::test;

namespace
{

constexpr double ply = 0.3e-3; // thickness of each of six plies [m]
constexpr int num_modes = 10;

void set_thickness(Model& model)
{
  std::fill(model.mesh.thickness.begin(), model.mesh.thickness.end(), total_thickness(model.material.laminate));
}

/// Carbon [0/a/-a]s on an arch; parameters: thickness of the 0 plies and of the others over 0.3 mm, a in degrees.
ChangedPlate angle_ply_plate()
{
  return {plate_model(arched_rectangle(6 * ply), stack(reference_carbon(), ply, {0, 60, -60, -60, 60, 0})),
          [](std::span<const double> p, Model& model)
          {
            std::vector<Ply>& plies = model.material.laminate.plies;
            for (const std::size_t i : {0U, 5U})
              plies[i].thickness = ply * p[0];
            for (const std::size_t i : {1U, 2U, 3U, 4U})
              plies[i].thickness = ply * p[1];
            plies[1].angle = plies[4].angle = Angle::degrees(p[2]);
            plies[2].angle = plies[3].angle = Angle::degrees(-p[2]);
            set_thickness(model);
          }};
}

const ParameterBox three_plies = {{0.7, 0.7, 45.0}, {1.3, 1.3, 75.0}};

/// A factor on the thickness of all plies.
ChangedPlate scaled_plate()
{
  return {plate_model(arched_rectangle(6 * ply), stack(reference_carbon(), ply, {0, 60, -60, -60, 60, 0})),
          [](std::span<const double> p, Model& model)
          {
            for (Ply& each : model.material.laminate.plies)
              each.thickness = ply * p[0];
            set_thickness(model);
          }};
}

/// Parameters: modulus [GPa] and density [kg/m3] of an isotropic plate.
ChangedPlate isotropic_plate(ShellMesh mesh, double thickness)
{
  return {plate_model(std::move(mesh), solid(isotropic(10e9, 0.3, 500.0), thickness)),
          [thickness](std::span<const double> p, Model& model)
          { model.material.laminate = solid(isotropic(p[0] * 1e9, 0.3, p[1]), thickness); }};
}

std::string error_of(const auto& call)
{
  try
  {
    call();
  }
  catch (const InvalidInput& error)
  {
    return error.what();
  }
  return {};
}

} // namespace

TEST_CASE("one thickness: a thousandth of a percent from three snapshots")
{
  ChangedPlate design = scaled_plate();
  const ReducedModel reduced(design, {{0.7}, {1.3}}, {.num_modes = num_modes, .tolerance = 1e-5});
  CHECK(reduced.figures().converged);
  CHECK(reduced.figures().num_snapshots <= 5);
  const Comparison found = compare(design, reduced, 12, num_modes);
  CHECK(found.largest_error < 1e-5);
  CHECK(found.share_within >= 0.95);
  // At a snapshot the basis holds the modes but for what was dropped, a tenth of the tolerance.
  const std::array end = {1.3};
  const Eigen::VectorXd full = full_modes(design, end, num_modes).frequencies_hz;
  CHECK((reduced.modes(end).frequencies_hz - full).cwiseQuotient(full).cwiseAbs().maxCoeff() < 1e-6);
}

TEST_CASE("three ply parameters: within the tolerance, the estimate holds and is of use")
{
  ChangedPlate design = angle_ply_plate();
  const ReducedModel reduced(design, three_plies, {.num_modes = num_modes, .tolerance = 5e-4});
  CHECK(reduced.figures().converged);
  // The six numbers of the in-plane stiffness of a ply and thirty-three of the section at most.
  CHECK(reduced.figures().num_stiffness_terms <= 33);
  const Comparison found = compare(design, reduced, 30, num_modes);
  CHECK(found.largest_error < 5e-4);
  CHECK(found.share_within >= 0.95);
  CHECK(found.mean_estimate < 5e-4);
}

TEST_CASE("the estimate is honest where the model is poor")
{
  ChangedPlate design = angle_ply_plate();
  const ReducedModel reduced(design, {{0.5, 0.5, 0.0}, {2.0, 2.0, 90.0}},
                             {.num_modes = num_modes, .tolerance = 1e-5, .max_snapshots = 8});
  CHECK_FALSE(reduced.figures().converged);
  CHECK(reduced.summary().find("not converged") != std::string::npos);
  const Comparison found = compare(design, reduced, 30, num_modes);
  CHECK(found.largest_error > 1e-4); // else this says nothing
  CHECK(found.share_within >= 0.95);
}

TEST_CASE("modulus and density scale frequencies by their roots, and slopes say so")
{
  // K is proportional to E and M to the density: f ~ sqrt(E / rho) without any approximation.
  ChangedPlate design = isotropic_plate(arched_rectangle(3e-3), 3e-3);
  const ReducedModel reduced(design, {{5.0, 300.0}, {20.0, 900.0}}, {.num_modes = 6, .tolerance = 1e-6});
  const std::array here = {8.0, 700.0};
  const std::array there = {16.0, 350.0};
  const ReducedModes modes = reduced.modes(here);
  const ReducedModes stiffer = reduced.modes(there);
  CHECK(
      (stiffer.frequencies_hz - 2.0 * modes.frequencies_hz).cwiseQuotient(modes.frequencies_hz).cwiseAbs().maxCoeff() <
      1e-8);
  CHECK(stiffer.mass == relative(0.5 * modes.mass, 1e-10));
  const Eigen::MatrixXd slopes = reduced.slopes(here, modes);
  for (Eigen::Index j = 0; j < 6; ++j)
  {
    CHECK(slopes(j, 0) == relative(0.5 * modes.frequencies_hz(j) / 8.0, 1e-6));
    CHECK(slopes(j, 1) == relative(-0.5 * modes.frequencies_hz(j) / 700.0, 1e-6));
  }
}

TEST_CASE("modes that cross keep their order and their shapes")
{
  // Without Poisson contraction bending along a flat strip knows E1 alone, 22.37/(2 pi L^2) sqrt(E1 t^2/(12 rho)), and
  // bending across E2 alone: as E2 grows, it climbs through bending along.
  Material spruce = reference_spruce();
  spruce.elastic.nu12 = spruce.elastic.nu13 = spruce.elastic.nu23 = 0.0;
  ChangedPlate design(plate_model(rectangle(0.3, 0.16, 6, 4, 3e-3), solid(spruce, 3e-3)),
                      [&](std::span<const double> p, Model& model)
                      { model.material.laminate.plies[0].material.elastic.E2 = p[0] * 1e9; });
  const ReducedModel reduced(design, {{0.4}, {1.6}}, {.num_modes = 6, .tolerance = 1e-5});
  int place_before = -1;
  bool crossed = false;
  for (int i = 0; i <= 24; ++i)
  {
    const std::array point = {0.4 + 1.2 * i / 24.0};
    const ReducedModes modes = reduced.modes(point);
    const Eigen::VectorXd full = full_modes(design, point, 6).frequencies_hz;
    CHECK((modes.frequencies_hz - full).cwiseQuotient(full).cwiseAbs().maxCoeff() < 1e-5);
    Eigen::Index along = 0;
    CHECK((modes.frequencies_hz.array() / 179.6 - 1.0).abs().minCoeff(&along) < 0.01);
    const auto place = static_cast<int>(along);
    crossed = crossed || (place_before >= 0 && place != place_before);
    place_before = place;
  }
  CHECK(crossed);
}

TEST_CASE("a pair of equal modes is found as a pair")
{
  // The modes of a square that bend along x and y combine to two different ones, the next pair is equal by symmetry.
  ChangedPlate design = isotropic_plate(rectangle(0.2, 0.2, 6, 6, 2e-3), 2e-3);
  const ReducedModel reduced(design, {{5.0, 300.0}, {20.0, 900.0}}, {.num_modes = 8, .tolerance = 1e-6});
  const std::array point = {12.0, 400.0};
  const ReducedModes modes = reduced.modes(point);
  const Eigen::VectorXd full = full_modes(design, point, 8).frequencies_hz;
  CHECK((modes.frequencies_hz - full).cwiseQuotient(full).cwiseAbs().maxCoeff() < 1e-6);
  CHECK(modes.frequencies_hz(4) / modes.frequencies_hz(3) == doctest::Approx(1.0).epsilon(1e-3)); // cut cells
  CHECK(modes.frequencies_hz(3) / modes.frequencies_hz(2) > 1.05);
}

TEST_CASE("shapes, assurance and mass are those of the full model")
{
  ChangedPlate design = scaled_plate();
  const ReducedModel reduced(design, {{0.8}, {1.2}}, {.num_modes = 6, .tolerance = 1e-5});
  const std::array point = {0.93};
  const ReducedModes modes = reduced.modes(point);
  const Model model = design.build(point);
  const System system = assemble(model);
  const ModalResult full = solve_modes(system, {.num_modes = 6});
  CHECK(modes.mass == relative(system.mass));
  const ModeShapes reduced_shapes = mode_shapes(model.mesh, reduced.dofs(), reduced.shapes(modes));
  const ModeShapes full_shapes = mode_shapes(model.mesh, system.dofs, full.shapes);
  CHECK(modal_assurance(reduced_shapes, full_shapes).diagonal().minCoeff() > 0.99999);

  const ReducedModes other = reduced.modes(std::array{1.17});
  const ModeShapes other_shapes = mode_shapes(reduced.model().mesh, reduced.dofs(), reduced.shapes(other));
  const ModeShapes same_mesh = mode_shapes(reduced.model().mesh, reduced.dofs(), reduced.shapes(modes));
  CHECK((reduced.assurance(modes, other) - modal_assurance(same_mesh, other_shapes)).cwiseAbs().maxCoeff() < 1e-9);
}

TEST_CASE("two models built at once are the same, bit for bit")
{
  std::array<Eigen::VectorXd, 2> frequencies;
  const auto build = [&](std::size_t i)
  {
    ChangedPlate design = angle_ply_plate();
    const ReducedModel reduced(design, three_plies, {.num_modes = 6, .tolerance = 1e-3});
    const ReducedModes modes = reduced.modes(std::array{0.9, 1.1, 50.0});
    frequencies[i] = modes.frequencies_hz + modes.errors_hz;
  };
  std::thread other(build, 1);
  build(0);
  other.join();
  REQUIRE(frequencies[0].size() == 6);
  CHECK(frequencies[0] == frequencies[1]);
}

TEST_CASE("outside its box a reduced model refuses to guess")
{
  ChangedPlate design = scaled_plate();
  const ReducedModel reduced(design, {{0.9}, {1.1}}, {.num_modes = 3, .tolerance = 1e-3});
  CHECK(error_of([&] { (void)reduced.modes(std::array{1.2}); }) ==
        "ReducedModel: parameter 1 = 1.2 lies outside its box, 0.9 to 1.1; build a reduced model of a wider box");
  CHECK_THROWS_AS((void)reduced.modes(std::array{std::nan("")}), InvalidInput);
  CHECK_THROWS_AS((void)reduced.modes(std::array{1.0, 1.0}), InvalidInput);
  CHECK_NOTHROW((void)reduced.modes(std::array{0.9}));
  CHECK_NOTHROW((void)reduced.modes(std::array{1.1}));
}

TEST_CASE("boxes and options that make no sense are refused")
{
  ChangedPlate design = scaled_plate();
  CHECK_THROWS_AS(ReducedModel(design, {{}, {}}), InvalidInput);
  CHECK_THROWS_AS(ReducedModel(design, {{1.0}, {0.9}}), InvalidInput);
  CHECK_THROWS_AS(ReducedModel(design, {{0.9}, {1.1, 1.2}}), InvalidInput);
  CHECK_THROWS_AS(ReducedModel(design, {{0.9}, {1.1}}, {.num_modes = 0}), InvalidInput);
  CHECK_THROWS_AS(ReducedModel(design, {{0.9}, {1.1}}, {.tolerance = 0.0}), InvalidInput);
}
