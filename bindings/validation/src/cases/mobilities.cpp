// SPDX-License-Identifier: MPL-2.0
// Velocity per force at a point.
#include "case_models.h"

#include <plate/laminates/constants.h>
#include <plate/post/infinite_plate.h>
#include <plate/solvers/forced_response.h>
#include <plate/validation/sample_models.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace plate::validation
{
namespace
{

using std::numbers::pi;

Material spruce()
{
  return {.name = "spruce",
          .elastic = {.E1 = 12e9,
                      .E2 = 0.8e9,
                      .E3 = 0.8e9,
                      .G12 = 0.75e9,
                      .G13 = 0.75e9,
                      .G23 = 0.75e9,
                      .nu12 = 0.38,
                      .nu13 = 0.0,
                      .nu23 = 0.0},
          .density = 420.0};
}

Eigen::Matrix3d bending_stiffness(const Laminate& laminate)
{
  const double thickness = total_thickness(laminate);
  return abd_matrix(section_stiffness(laminate, thickness, Eigen::Matrix3d::Identity(), {})).bottomRightCorner<3, 3>();
}

double infinite_mobility(const Laminate& laminate)
{
  return infinite_plate_mobility(bending_stiffness(laminate), areal_mass(laminate));
}

Values infinite_spruce(const ReferenceCase&)
{
  const double Y = infinite_mobility(solid(spruce(), 2.8e-3));
  return {{"Y_s_kg", Y}, {"Y_dB", mobility_level(Y)}};
}

Values infinite_isotropic(const ReferenceCase&)
{
  return {{"Y_s_kg", infinite_mobility(solid(isotropic(70e9, 0.3, 2700.0), 3e-3))}};
}

/// Quantities "real_at_200_hz", "imaginary_...", "absolute_..." of one drive.
Values mobility_values(const ResponseModes& modes, const ReferenceCase& reference)
{
  Values values;
  for (const ReferenceValue& value : reference.values)
  {
    const std::string kind = value.quantity.substr(0, value.quantity.find('_'));
    const double hz = std::stod(value.quantity.substr(value.quantity.find("_at_") + 4));
    const std::complex<double> Y = mobility(modes, hz)(0, 0);
    values[value.quantity] = kind == "real" ? Y.real() : kind == "imaginary" ? Y.imag() : std::abs(Y);
  }
  return values;
}

/// The modes are those of the references, in closed form: beside a resonance or between two, an error of 0.05 % of a
/// frequency, as elements have, makes 1 % of the mobility. What is on trial is the response.
///
/// Modes with one drive: frequency [Hz] and motion there [1/sqrt(kg)] of each.
ResponseModes modes_with_loss(const std::vector<Eigen::Vector2d>& modes, double loss)
{
  const auto n = static_cast<Eigen::Index>(modes.size());
  ResponseModes response = {.frequencies_hz = Eigen::VectorXd(n),
                            .loss = Eigen::VectorXd::Constant(n, loss),
                            .motion = Eigen::MatrixXd(1, n),
                            .volumes = {}};
  for (Eigen::Index i = 0; i < n; ++i)
  {
    response.frequencies_hz(i) = modes[static_cast<std::size_t>(i)](0);
    response.motion(0, i) = modes[static_cast<std::size_t>(i)](1);
  }
  return response;
}

/// 350 x 200 x 2.8 mm, hinged, driven at (190, 83) mm from a corner: double sines [Leissa1969].
Values hinged_plate(const ReferenceCase& reference)
{
  constexpr double length = 0.35;
  constexpr double width = 0.2;
  const Laminate laminate = solid(spruce(), 2.8e-3);
  const Eigen::Matrix3d D = bending_stiffness(laminate);
  const double mass = areal_mass(laminate);
  std::vector<Eigen::Vector2d> modes;
  for (int m = 1; m <= 60; ++m)
    for (int n = 1; n <= 60; ++n)
    {
      const double kx = m * pi / length;
      const double ky = n * pi / width;
      const double w2 = (D(0, 0) * std::pow(kx, 4) + 2.0 * (D(0, 1) + 2.0 * D(2, 2)) * kx * kx * ky * ky +
                         D(1, 1) * std::pow(ky, 4)) /
                        mass;
      modes.emplace_back(std::sqrt(w2) / (2.0 * pi),
                         2.0 / std::sqrt(mass * length * width) * std::sin(0.190 * kx) * std::sin(0.083 * ky));
    }
  return mobility_values(modes_with_loss(modes, 0.02), reference);
}

/// Roots of cosh x cos x = 1 above 0, which lie near (i + 1/2) pi.
double free_beam_root(int i)
{
  double x = (i + 0.5) * pi;
  for (int step = 0; step < 20; ++step) // Newton on cos x - 1 / cosh x
    x += (std::cos(x) - 1.0 / std::cosh(x)) / (std::sin(x) - std::tanh(x) / std::cosh(x));
  return x;
}

/// 350 x 20 x 3 mm, E 12 GPa, 420 kg/m3, driven at its end: modes of a slender beam [Blevins1979].
Values free_beam(const ReferenceCase& reference)
{
  constexpr double length = 0.35;
  constexpr double width = 0.02;
  constexpr double height = 3e-3;
  constexpr double density = 420.0;
  const double mass = density * length * width * height;
  const double speed = std::sqrt(12e9 * height * height / (12.0 * density)); // sqrt(E I / (rho A)) [m2/s]
  // Up and down, and a turn about the middle with moment of inertia m l^2 / 12. The ends of all others move by 2.
  std::vector<Eigen::Vector2d> modes = {{0.0, 1.0 / std::sqrt(mass)}, {0.0, std::sqrt(3.0 / mass)}};
  for (int i = 1; i <= 60; ++i)
    modes.emplace_back(std::pow(free_beam_root(i) / length, 2) * speed / (2.0 * pi), 2.0 / std::sqrt(mass));
  return mobility_values(modes_with_loss(modes, 0.01), reference);
}

} // namespace

std::vector<CaseModel> mobilities()
{
  return {{.name = "mobility of an infinite spruce plate", .compute = infinite_spruce},
          {.name = "mobility of an infinite isotropic plate", .compute = infinite_isotropic},
          {.name = "mobility of a hinged spruce plate", .compute = hinged_plate},
          {.name = "mobility of the end of a free beam", .compute = free_beam}};
}

} // namespace plate::validation
