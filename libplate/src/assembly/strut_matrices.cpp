// SPDX-License-Identifier: MPL-2.0
#include "strut_matrices.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/region_places.h>

#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <span>
#include <utility>
#include <vector>

namespace plate
{

namespace
{

using Matrix12 = Eigen::Matrix<double, 12, 12>;

/// A foot: its middle and the motion of the surface under it from the displacements of places.
struct Foot
{
  Eigen::Vector3d middle = Eigen::Vector3d::Zero();         // in the axes of the body [m]
  std::map<int, Eigen::Matrix<double, 6, 3>> displacements; // per place: what its displacement does to the foot
};

Eigen::Matrix3d cross_matrix(const Eigen::Vector3d& v)
{
  Eigen::Matrix3d m;
  m << 0.0, -v.z(), v.y(), v.z(), 0.0, -v.x(), -v.y(), v.x(), 0.0;
  return m;
}

/// A point under a foot, and the nodes whose displacements it has.
struct Sample
{
  double share;                                     // of the foot [-]
  Eigen::Vector3d position;                         // in the axes of the body [m]
  std::vector<std::pair<int, double>> displacement; // places and their shape functions
};

const BodyPart& part_under(const Body& body, std::size_t part, const char* what)
{
  if (part >= body.parts.size())
    throw InvalidInput(message("body: a ", what, " stands on part ", part, "; there are ", body.parts.size()));
  return body.parts[part];
}

std::vector<Sample> samples_under(const Body& body, const BodyNodes& nodes, const StrutFoot& at)
{
  const BodyPart& part = part_under(body, at.part, "strut");
  const ShellMesh& mesh = part.model.mesh;
  std::vector<Sample> samples;
  for (const SharedPlace& spot : places_in(mesh, at.region))
  {
    const CubicTriangle::Vector N = CubicTriangle::shape(spot.point.xi, spot.point.eta);
    Sample sample = {.share = spot.share, .position = Eigen::Vector3d::Zero(), .displacement = {}};
    Eigen::Index i = 0;
    for (const int node : mesh.triangles[spot.point.triangle])
    {
      sample.position += N(i) * (part.placement * mesh.nodes[static_cast<std::size_t>(node)]);
      sample.displacement.emplace_back(nodes.of_part[at.part][static_cast<std::size_t>(node)], N(i++));
    }
    samples.push_back(std::move(sample));
  }
  return samples;
}

std::vector<Sample> samples_under(const Body& body, const BodyNodes& nodes, const FixedMass& at)
{
  const BodyPart& part = part_under(body, at.part, "mass");
  std::vector<Sample> samples;
  for (const int node : at.nodes)
  {
    const std::vector<int>& places = nodes.of_part[at.part];
    if (node < 0 || static_cast<std::size_t>(node) >= places.size())
      throw InvalidInput(
          message("body: a mass is fixed to node ", node, " of ", part.name, ", which has ", places.size()));
    const auto n = static_cast<std::size_t>(node);
    samples.push_back({.share = 1.0 / static_cast<double>(at.nodes.size()),
                       .position = part.placement * part.model.mesh.nodes[n],
                       .displacement = {{places[n], 1.0}}});
  }
  return samples;
}

/// Mean displacement, and the rotation that fits the displacements best: sum (r x u) = sum (r.r - r rT) omega.
Foot foot_of(const std::vector<Sample>& samples)
{
  Foot foot;
  for (const Sample& sample : samples)
    foot.middle += sample.share * sample.position;
  Eigen::Matrix3d spread = Eigen::Matrix3d::Zero();
  for (const Sample& sample : samples)
  {
    const Eigen::Matrix3d cross = cross_matrix(sample.position - foot.middle);
    spread -= sample.share * cross * cross;
  }
  const Eigen::Matrix3d from_moment = spread.inverse();
  for (const Sample& sample : samples)
  {
    Eigen::Matrix<double, 6, 3> felt;
    felt << Eigen::Matrix3d::Identity(), from_moment * cross_matrix(sample.position - foot.middle);
    for (const auto& [place, N] : sample.displacement)
    {
      const auto entry = foot.displacements.try_emplace(place, Eigen::Matrix<double, 6, 3>::Zero()).first;
      entry->second += sample.share * N * felt;
    }
  }
  return foot;
}

/// Stiffness of a round beam with shear, axis 1 along it; unknowns: displacement and rotation of both ends.
///
/// @source Timoshenko beam with exact cubic shapes: [Przemieniecki1968] sec. 5.6; shear coefficient of a circle 0.9
Matrix12 beam_stiffness(const Strut& strut, double length)
{
  const double area = 0.25 * std::numbers::pi * strut.diameter * strut.diameter;
  const double I = area * strut.diameter * strut.diameter / 16.0;
  const double phi = 12.0 * strut.E * I / (0.9 * strut.G * area * length * length);
  const double b = strut.E * I / ((1.0 + phi) * length * length * length);
  Matrix12 K = Matrix12::Zero();
  const auto spring = [&](int k, double stiffness)
  {
    K(k, k) += stiffness;
    K(k + 6, k + 6) += stiffness;
    K(k, k + 6) -= stiffness;
    K(k + 6, k) -= stiffness;
  };
  spring(0, strut.E * area / length);
  spring(3, strut.G * 2.0 * I / length);
  // Deflection w along axis 2 or 3 with slope s = sign * rotation about the other axis.
  const auto bend = [&](int w, int turn, double sign)
  {
    Eigen::Matrix4d B;
    B << 12.0, 6.0 * length, -12.0, 6.0 * length,                                                  //
        6.0 * length, (4.0 + phi) * length * length, -6.0 * length, (2.0 - phi) * length * length, //
        -12.0, -6.0 * length, 12.0, -6.0 * length,                                                 //
        6.0 * length, (2.0 - phi) * length * length, -6.0 * length, (4.0 + phi) * length * length;
    const std::array<int, 4> at = {w, turn, w + 6, turn + 6};
    const Eigen::Vector4d scale(1.0, sign, 1.0, sign);
    for (int r = 0; r < 4; ++r)
      for (int c = 0; c < 4; ++c)
        K(at[static_cast<std::size_t>(r)], at[static_cast<std::size_t>(c)]) += b * scale(r) * scale(c) * B(r, c);
  };
  bend(1, 5, 1.0);
  bend(2, 4, -1.0);
  return K;
}

/// Mass of a rod whose points move on the straight line between its ends: a post is too stiff to do otherwise.
Matrix12 rod_mass(double mass)
{
  Matrix12 M = Matrix12::Zero();
  for (int k = 0; k < 3; ++k)
  {
    M(k, k) = M(k + 6, k + 6) = mass / 3.0;
    M(k, k + 6) = M(k + 6, k) = mass / 6.0;
  }
  return M;
}

/// Places under feet and the motions of these.
StrutMatrices on_feet(const BodyNodes& nodes, std::span<const Foot> feet)
{
  StrutMatrices out = {};
  for (const Foot& foot : feet)
    for (const auto& entry : foot.displacements)
      out.places.push_back(entry.first);
  std::sort(out.places.begin(), out.places.end());
  out.places.erase(std::unique(out.places.begin(), out.places.end()), out.places.end());
  Eigen::Index columns = 0;
  for (const int place : out.places)
    columns += nodes.nodes[static_cast<std::size_t>(place)].num_unknowns();
  out.motions = Eigen::MatrixXd::Zero(6 * static_cast<Eigen::Index>(feet.size()), columns);
  Eigen::Index at = 0;
  for (const int place : out.places)
  {
    for (std::size_t f = 0; f < feet.size(); ++f)
      if (const auto entry = feet[f].displacements.find(place); entry != feet[f].displacements.end())
        out.motions.block<6, 3>(6 * static_cast<Eigen::Index>(f), at) = entry->second;
    at += nodes.nodes[static_cast<std::size_t>(place)].num_unknowns();
  }
  return out;
}

} // namespace

StrutMatrices strut_matrices(const Body& body, const BodyNodes& nodes, const Strut& strut)
{
  if (!(strut.E > 0.0 && strut.G > 0.0 && strut.density > 0.0 && strut.diameter > 0.0))
    throw InvalidInput(message("body: a strut needs E, G, density and diameter > 0; got ", strut.E, " Pa, ", strut.G,
                               " Pa, ", strut.density, " kg/m3, ", strut.diameter, " m"));
  const std::array<Foot, 2> feet = {foot_of(samples_under(body, nodes, strut.feet[0])),
                                    foot_of(samples_under(body, nodes, strut.feet[1]))};
  const Eigen::Vector3d along = feet[1].middle - feet[0].middle;
  const double length = along.norm();
  // The axes across a round post may point anywhere.
  Eigen::Matrix3d axes;
  axes.col(0) = along / length;
  axes.col(1) = axes.col(0).unitOrthogonal();
  axes.col(2) = axes.col(0).cross(axes.col(1));
  Matrix12 turned = Matrix12::Zero();
  for (int k = 0; k < 4; ++k)
    turned.block<3, 3>(3 * k, 3 * k) = axes.transpose();
  StrutMatrices out = on_feet(nodes, feet);
  out.K = turned.transpose() * beam_stiffness(strut, length) * turned;
  out.mass = strut.density * 0.25 * std::numbers::pi * strut.diameter * strut.diameter * length;
  out.M = rod_mass(out.mass);
  out.centre = 0.5 * (feet[0].middle + feet[1].middle);
  return out;
}

StrutMatrices mass_matrices(const Body& body, const BodyNodes& nodes, const FixedMass& mass)
{
  if (!(mass.mass > 0.0 && mass.centre.allFinite() && mass.inertia.allFinite()))
    throw InvalidInput(message("body: a mass must be positive and finite; got ", mass.mass, " kg"));
  if (mass.nodes.size() < 3)
    throw InvalidInput(message("body: a mass must be fixed to three nodes or more; got ", mass.nodes.size()));
  const Foot foot = foot_of(samples_under(body, nodes, mass));
  StrutMatrices out = on_feet(nodes, std::span(&foot, 1));
  // The centre moves by u - d x omega.
  Eigen::Matrix<double, 3, 6> to_centre;
  to_centre << Eigen::Matrix3d::Identity(), -cross_matrix(mass.centre - foot.middle);
  out.K = Eigen::MatrixXd::Zero(6, 6);
  out.M = mass.mass * to_centre.transpose() * to_centre;
  out.M.bottomRightCorner<3, 3>() += mass.inertia;
  out.mass = mass.mass;
  out.centre = mass.centre;
  return out;
}

} // namespace plate
