// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/bar.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{

double BarProfile::at(double s) const
{
  if (s <= station.front())
    return height.front();
  if (s >= station.back())
    return height.back();
  const auto above = std::upper_bound(station.begin(), station.end(), s);
  const auto i = static_cast<std::size_t>(above - station.begin());
  const double t = (s - station[i - 1]) / (station[i] - station[i - 1]);
  return height[i - 1] + t * (height[i] - height[i - 1]);
}

double torsional_stiffness(double width, double height, double G_width, double G_height)
{
  // Squeeze the height so that the section becomes isotropic, then use the classical series of the rectangle. It
  // converges where the height is the longer side.
  const double ratio = height * std::sqrt(G_width / G_height) / width;
  if (ratio < 1.0)
    return torsional_stiffness(height, width, G_height, G_width);
  constexpr double pi = std::numbers::pi;
  double series = 0.0;
  for (int n = 1; n <= 9; n += 2) // the terms fall as n^-5: these five leave 2e-5
    series += std::tanh(0.5 * n * pi * ratio) / std::pow(n, 5);
  const double factor = (1.0 - 192.0 / (std::pow(pi, 5) * ratio) * series) / 3.0;
  return factor * G_height * height * std::pow(width, 3); // along the long side the shear flows with the height
}

double glued_torsional_stiffness(double width, double height, double plate_thickness, double G_width, double G_height)
{
  // The glued end has no free corner: half of a bar of twice the height.
  const double web = 0.5 * torsional_stiffness(width, 2.0 * height, G_width, G_height);
  const double through_corners = plate_thickness + width * width / (4.0 * plate_thickness);
  const double circle = std::min({through_corners, width, plate_thickness + height});
  const double slenderness = std::min(width, plate_thickness) / std::max(width, plate_thickness);
  return web + 0.15 * slenderness * std::pow(circle, 4) * G_width;
}

BarSection bar_section(const Bar& bar, const BarSeat& seat, double height, const Eigen::Matrix3d& frame,
                       const MaterialAxes& axes)
{
  const MaterialAxes board = {.axis = bar.axis, .up = axes.up};
  const Eigen::Matrix<double, 5, 5> S = ply_compliance(bar.material, {}, Grain::carved, frame, board);
  const double P = 1.0 / S(0, 0); // stress along the bar only: sides, bottom and the glue line leave it free across
  const double g = S(3, 0) * P;
  const double G = 1.0 / (S(3, 3) - g * S(0, 3));
  constexpr double shear_correction = 5.0 / 6.0;

  BarSection section = {};
  const double top = seat.face;
  const double bottom = top - height;
  for (std::size_t k = 0; k < section.P.size(); ++k)
  {
    const int power = static_cast<int>(k) + 1;
    const double moment = (std::pow(top, power) - std::pow(bottom, power)) / power;
    section.P[k] = P * moment;
    section.mass[k] = bar.material.density * moment;
  }
  section.shear = shear_correction * G * height;
  section.shear_from_strain = g;
  section.torsion =
      glued_torsional_stiffness(bar.width, height, seat.plate_thickness, 1.0 / S(2, 2), 1.0 / S(3, 3)) / bar.width;
  return section;
}

} // namespace plate
