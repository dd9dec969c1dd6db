// SPDX-License-Identifier: MPL-2.0
#include <plate/elements/bar.h>

#include <algorithm>

namespace plate
{

namespace
{

/// Straight between the points of a table, constant beyond its ends.
double straight_between(const std::vector<double>& place, const std::vector<double>& value, double at)
{
  if (at <= place.front())
    return value.front();
  if (at >= place.back())
    return value.back();
  const auto above = std::upper_bound(place.begin(), place.end(), at);
  const auto i = static_cast<std::size_t>(above - place.begin());
  const double t = (at - place[i - 1]) / (place[i] - place[i - 1]);
  return value[i - 1] + t * (value[i] - value[i - 1]);
}

} // namespace

double BarProfile::at(double s) const
{
  return straight_between(station, height, s);
}

double BarTorsion::at(double s) const
{
  return straight_between(station, stiffness, s);
}

Eigen::Matrix<double, 5, 5> bar_compliance(const Bar& bar, const Eigen::Matrix3d& frame, const MaterialAxes& axes)
{
  return ply_compliance(bar.material, {}, Grain::carved, frame, {.axis = bar.axis, .up = axes.up});
}

BarSection bar_section(const Bar& bar, double face, double height, const Eigen::Matrix3d& frame,
                       const MaterialAxes& axes)
{
  const Eigen::Matrix<double, 5, 5> S = bar_compliance(bar, frame, axes);
  const double P = 1.0 / S(0, 0); // stress along the bar only: sides, bottom and the glue line leave it free across
  const double g = S(3, 0) * P;
  const double G = 1.0 / (S(3, 3) - g * S(0, 3));
  constexpr double shear_correction = 5.0 / 6.0;

  BarSection section = {};
  const double top = face;
  const double bottom = top - height;
  double top_power = top;
  double bottom_power = bottom;
  for (std::size_t k = 0; k < section.P.size(); ++k)
  {
    const double moment = (top_power - bottom_power) / static_cast<double>(k + 1);
    section.P[k] = P * moment;
    section.mass[k] = bar.material.density * moment;
    top_power *= top;
    bottom_power *= bottom;
  }
  section.shear = shear_correction * G * height;
  section.shear_from_strain = g;
  return section;
}

} // namespace plate
