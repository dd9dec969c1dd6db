// SPDX-License-Identifier: MPL-2.0
// Plates with patches: beams and plates whose frequencies are known otherwise.
#include "sample_models.h"

#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <Eigen/LU>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

constexpr double length = 0.6;     // of the strip [m]
constexpr double width = 0.012;    // [m]
constexpr double thickness = 2e-3; // [m]
constexpr double step_at = 0.1;    // half length of the patched part [m]

PolygonRegion box(double x0, double x1, double half_width)
{
  return {{{x0, -half_width}, {x1, -half_width}, {x1, half_width}, {x0, half_width}}};
}

Eigen::VectorXd frequencies(const Model& model, int count)
{
  return solve_modes(assemble(model), {.num_modes = count}).frequencies_hz;
}

/// A narrow strip along x; its grid lines meet the ends of the patch if the number of cells is a multiple of six.
ShellMesh strip(int cells)
{
  test::GridPlate grid = {.x = {}, .y = {-width / 2, width / 2}, .surface = test::flat(), .thickness = thickness};
  for (int i = 0; i <= cells; ++i)
    grid.x.push_back(length * (static_cast<double>(i) / cells - 0.5));
  return test::grid_mesh(grid);
}

/// Frequency equation of a free beam of two parts, symmetric about its middle: stiff within `step_at`.
///
/// Half of it, deflection even: w'(0) = w'''(0) = 0, w'' = w''' = 0 at the end, continuous w, w', EI w'', EI w'''.
double determinant(double omega, double EI1, double m1, double EI2, double m2)
{
  const double k1 = std::pow(m1 * omega * omega / EI1, 0.25);
  const double k2 = std::pow(m2 * omega * omega / EI2, 0.25);
  const double a = step_at;
  const double b = length / 2.0 - step_at;
  Eigen::Matrix<double, 6, 6> A = Eigen::Matrix<double, 6, 6>::Zero();
  // Inner part: cos, cosh of k1 x; outer part: cos, sin, cosh, sinh of k2 s, s from the step.
  A.row(0) << std::cos(k1 * a), std::cosh(k1 * a), -1, 0, -1, 0;
  A.row(1) << -k1 * std::sin(k1 * a), k1 * std::sinh(k1 * a), 0, -k2, 0, -k2;
  A.row(2) << -k1 * k1 * EI1 * std::cos(k1 * a), k1 * k1 * EI1 * std::cosh(k1 * a), k2 * k2 * EI2, 0, -k2 * k2 * EI2, 0;
  A.row(3) << std::pow(k1, 3) * EI1 * std::sin(k1 * a), std::pow(k1, 3) * EI1 * std::sinh(k1 * a), 0,
      std::pow(k2, 3) * EI2, 0, -std::pow(k2, 3) * EI2;
  A.row(4) << 0, 0, -std::cos(k2 * b), -std::sin(k2 * b), std::cosh(k2 * b), std::sinh(k2 * b);
  A.row(5) << 0, 0, std::sin(k2 * b), -std::cos(k2 * b), std::sinh(k2 * b), std::cosh(k2 * b);
  return A.fullPivLu().determinant() / (A.row(2).norm() * A.row(3).norm());
}

/// First root of the frequency equation [Hz].
double stepped_beam_hz(double EI1, double m1, double EI2, double m2)
{
  double low = 2.0 * std::numbers::pi;
  const double sign = determinant(low, EI1, m1, EI2, m2);
  double high = low;
  while (determinant(high, EI1, m1, EI2, m2) * sign > 0.0)
  {
    low = high;
    high *= 1.01;
  }
  for (int i = 0; i < 60; ++i)
  {
    const double middle = 0.5 * (low + high);
    (determinant(middle, EI1, m1, EI2, m2) * sign > 0.0 ? low : high) = middle;
  }
  return low / (2.0 * std::numbers::pi);
}

/// Lowest mode of the strip that moves along z.
double first_bending(const Model& model)
{
  const System system = assemble(model);
  const ModalResult modes = solve_modes(system, {.num_modes = 6});
  for (Eigen::Index i = 0; i < 6; ++i)
  {
    const Eigen::Matrix3Xd u = nodal_displacements(system.dofs, modes.shapes.col(i));
    if (u.row(2).squaredNorm() > 0.9 * u.squaredNorm())
      return modes.frequencies_hz(i);
  }
  return 0.0;
}

} // namespace

TEST_CASE("a patch all over one side makes the plate of all plies, wherever its reference surface lies")
{
  // The section counts from the middle of the laminate below the patch, that of the thicker laminate from its own
  // middle; both interpolate the same displacements over the thickness of a flat plate, so the frequencies are equal.
  const Laminate base = test::stack(test::carbon_epoxy(), 0.3e-3, {0, 90, 30});
  const Laminate more = test::stack(test::carbon_epoxy(), 0.2e-3, {45, 0});
  for (const PlateSide side : {PlateSide::inside, PlateSide::outside})
  {
    Model patched = test::plate_model(test::rectangle(0.3, 0.2, 6, 4, 0.9e-3), base);
    patched.patches = {{.side = side, .region = box(-1.0, 1.0, 1.0), .laminate = more}};
    Laminate all = base;
    all.plies.insert(side == PlateSide::outside ? all.plies.end() : all.plies.begin(), more.plies.begin(),
                     more.plies.end());
    const Model thicker = test::plate_model(test::rectangle(0.3, 0.2, 6, 4, 1.3e-3), all);
    const Eigen::VectorXd ratio = frequencies(patched, 8).cwiseQuotient(frequencies(thicker, 8));
    CHECK((ratio.array() - 1.0).abs().maxCoeff() < 1e-6);
    CHECK(assemble(patched).mass == doctest::Approx(assemble(thicker).mass).epsilon(1e-12));
  }
}

TEST_CASE("patches on one side lie on each other in their order")
{
  const Laminate base = test::stack(test::carbon_epoxy(), 0.3e-3, {0, 90});
  const Laminate first = test::stack(test::carbon_epoxy(), 0.2e-3, {45});
  const Laminate second = test::stack(test::carbon_epoxy(), 0.4e-3, {0});
  Model patched = test::plate_model(test::rectangle(0.3, 0.2, 4, 3, 0.6e-3), base);
  patched.patches = {{.side = PlateSide::inside, .region = box(-1.0, 1.0, 1.0), .laminate = first},
                     {.side = PlateSide::inside, .region = box(-1.0, 1.0, 1.0), .laminate = second}};
  Laminate all = second;
  all.plies.insert(all.plies.end(), first.plies.begin(), first.plies.end());
  all.plies.insert(all.plies.end(), base.plies.begin(), base.plies.end());
  const Model thicker = test::plate_model(test::rectangle(0.3, 0.2, 4, 3, 1.2e-3), all);
  const Eigen::VectorXd ratio = frequencies(patched, 6).cwiseQuotient(frequencies(thicker, 6));
  CHECK((ratio.array() - 1.0).abs().maxCoeff() < 1e-6);
}

TEST_CASE("a strip with a patch over its middle on one side is a stepped beam")
{
  // Frequency equation of the stepped Euler-Bernoulli beam (derived above); the patched part bends about the middle of
  // all its plies, for a free beam carries no force along itself. Shear, Poisson's ratio zero, and rotary inertia take
  // less than 0.02 % at this slenderness; the eccentric patch's own swing along x another 0.02 %.
  const Material material = test::isotropic(10e9, 0.0, 500.0);
  const double patch = 1e-3;
  const auto EI = [&](double t) { return 10e9 * width * t * t * t / 12.0; };
  const double exact = stepped_beam_hz(EI(thickness + patch), 500.0 * width * (thickness + patch), EI(thickness),
                                       500.0 * width * thickness);
  const double bare =
      stepped_beam_hz(EI(thickness), 500.0 * width * thickness, EI(thickness), 500.0 * width * thickness);
  // A uniform free beam: 22.3733 / (2 pi L^2) sqrt(EI/m). The patch stiffens the middle by more than a tenth.
  CHECK(bare == doctest::Approx(22.3733 / (2.0 * std::numbers::pi * length * length) *
                                std::sqrt(EI(thickness) / (500.0 * width * thickness)))
                    .epsilon(1e-5));
  REQUIRE(exact > 1.1 * bare);
  const auto error = [&](PlateSide side, int cells)
  {
    Model model = test::plate_model(strip(cells), test::solid(material, thickness));
    model.patches = {{.side = side, .region = box(-step_at, step_at, 1.0), .laminate = test::solid(material, patch)}};
    return first_bending(model) / exact - 1.0;
  };
  for (const PlateSide side : {PlateSide::inside, PlateSide::outside})
  {
    CHECK(std::abs(error(side, 24)) < 5e-4);
    // Between grid lines the curvature jumps inside an element, which smooths the jump: first order in its size.
    const double coarse = error(side, 25);
    const double fine = error(side, 100);
    CHECK(coarse < 1.5e-2);
    CHECK(fine > 0.0);
    CHECK(fine < coarse / 3.0);
  }
}

TEST_CASE("a patch is cut off at the edge of the plate and has its exact mass elsewhere")
{
  const Material m = test::isotropic(10e9, 0.3, 500.0);
  Model model = test::plate_model(test::rectangle(0.3, 0.2, 30, 21, 2e-3), test::solid(m, 2e-3));
  const double bare = assemble(model).mass;
  const EllipseRegion ellipse = {.centre = {0.03, -0.01}, .axes = {0.12, 0.07}, .angle = Angle::degrees(25)};
  model.patches = {{.region = ellipse, .laminate = test::solid(m, 1e-3)}};
  CHECK((assemble(model).mass - bare) / (500.0 * 1e-3 * region_area(ellipse)) == doctest::Approx(1.0).epsilon(1e-3));
  model.patches[0].region = EllipseRegion{.centre = {0.15, 0.0}, .axes = {0.12, 0.07}, .angle = {}}; // half of it
  CHECK((assemble(model).mass - bare) / (0.5 * 500.0 * 1e-3 * region_area(ellipse)) ==
        doctest::Approx(1.0).epsilon(1e-3));
  model.patches[0].region = EllipseRegion{.centre = {0.3, 0.0}, .axes = {0.12, 0.07}, .angle = {}};
  CHECK(assemble(model).mass == doctest::Approx(bare).epsilon(1e-14));
}
