// SPDX-License-Identifier: MPL-2.0
// The order at which frequencies converge. A plate without Poisson contraction, hinged on two sides and free on two,
// bends as a hinged beam: the exact solution of first-order shear theory is smooth, w = sin(m pi x/L), and its
// frequency is known in closed form.
#include "sample_models.h"

#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <vector>

using namespace plate;

namespace
{

constexpr double length = 0.3;     // [m]
constexpr double width = 0.1;      // [m]
constexpr double thickness = 0.04; // of the order of the elements: thinner plates converge with h^4 until h < t [m]
constexpr double E = 10e9;         // [Pa]
constexpr double density = 500.0;  // [kg/m3]

/// Frequency of a hinged beam with shear (5/6) and rotary inertia, [Timoshenko1921]; half-wave m [Hz].
double exact_frequency(int m)
{
  const double k = m * std::numbers::pi / length;
  const double S = 5.0 / 6.0 * E / 2.0 * thickness;
  const double D = E * std::pow(thickness, 3) / 12.0;
  const double mass = density * thickness;
  const double J = density * std::pow(thickness, 3) / 12.0;
  // (S k^2 - mass w2)(D k^2 + S - J w2) = S^2 k^2, the lower root.
  const double a = mass * J;
  const double b = mass * (D * k * k + S) + J * S * k * k;
  const double c = S * k * k * D * k * k;
  const double w2 = 2.0 * c / (b + std::sqrt(b * b - 4.0 * a * c));
  return std::sqrt(w2) / (2.0 * std::numbers::pi);
}

/// Relative error of the mode nearest to bending with m half-waves.
double frequency_error(int m, int cells_x, int cells_y)
{
  Model model = test::plate_model(test::rectangle(length, width, cells_x, cells_y, thickness),
                                  test::solid(test::isotropic(E, 0.0, density), thickness));
  model.supports = {{.group = "x-", .support = EdgeSupport::hinged}, {.group = "x+", .support = EdgeSupport::hinged}};
  const ModalResult modes = solve_modes(assemble(model), {.num_modes = 6, .tolerance = 1e-13});
  return (modes.frequencies_hz.array() / exact_frequency(m) - 1.0).abs().minCoeff();
}

} // namespace

TEST_CASE("frequencies of the cubic triangle converge with the sixth power of the element size")
{
  // Theory: the energy of polynomials of degree p converges as h^2p, p = 3.
  for (const int m : {1, 2})
  {
    std::vector<double> errors;
    for (const int n : {1, 2, 4})
      errors.push_back(frequency_error(m, 3 * m * n, n));
    for (std::size_t i = 1; i < errors.size(); ++i)
    {
      const double order = std::log2(errors[i - 1] / errors[i]);
      MESSAGE("half-waves ", m, ": error ", errors[i - 1], " -> ", errors[i], ", order ", order);
      CHECK(order > 5.0);
      CHECK(order < 7.0);
    }
    CHECK(errors[0] < 1e-3);
  }
}
