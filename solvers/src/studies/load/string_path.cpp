// SPDX-License-Identifier: MPL-2.0
#include <plate/core/error.h>
#include <plate/solvers/studies/body_load.h>

#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

double degrees(double radians)
{
  return radians * 180.0 / std::numbers::pi;
}

} // namespace

StringPath string_path(const Eigen::Vector3d& foot, double height, const Eigen::Vector3d& saddle, Angle bend)
{
  constexpr int steps =
      60; // each brings the crest ten times closer and more where a bridge is lower than its afterlength
  StringPath path = {.crest = foot, .to_neck = {}, .to_lower = {}};
  double down_to_lower = 0.0; // angle of the strings from the bridge towards the lower end
  double lean = 0.0;          // of the bridge towards the neck
  for (int i = 0; i < steps; ++i)
  {
    path.crest = foot + height * Eigen::Vector3d(std::tan(lean), 0.0, 1.0);
    down_to_lower = std::atan2(path.crest.z() - saddle.z(), path.crest.x() - saddle.x());
    lean = 0.5 * bend.in_radians() - down_to_lower;
  }
  const double down_to_neck = bend.in_radians() - down_to_lower;
  if (!(height > 0.0 && down_to_lower > 0.0 && down_to_neck >= 0.0))
    throw InvalidInput(message("strings over a bridge ", height * 1e3, " mm high fall by ", degrees(down_to_lower),
                               " degrees to the lower end, and they bend by ", degrees(bend.in_radians()),
                               " in all; they must fall to both sides: take a lower bridge or a larger angle"));
  path.to_neck = {std::cos(down_to_neck), 0.0, -std::sin(down_to_neck)};
  path.to_lower = {-std::cos(down_to_lower), 0.0, -std::sin(down_to_lower)};
  return path;
}

} // namespace plate
