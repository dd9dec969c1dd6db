// SPDX-License-Identifier: MPL-2.0
#include "body_air_forms.h"

#include "../../symmetric_product.h"

#include <plate/core/error.h>

#include <Eigen/SVD>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate::sensitivity
{

namespace
{

/// Far below that of plates: pressures of two neighbours are subtracted.
constexpr double cavity_tolerance = 1e-12;

bool same_holes(const std::vector<HoleOutline>& a, const std::vector<HoleOutline>& b)
{
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const HoleOutline& one, const HoleOutline& other)
                    { return one.points == other.points && one.wall_thickness == other.wall_thickness; });
}

bool same_wall(const BodyPart& a, const BodyPart& b)
{
  return a.model.mesh.nodes == b.model.mesh.nodes && a.placement.matrix() == b.placement.matrix();
}

CavityModes cavity_modes(const CavitySpace& space, const Air& air, Eigen::Index count)
{
  CavityModes modes =
      solve_cavity_modes(space, air, {.num_modes = static_cast<int>(count), .tolerance = cavity_tolerance});
  if (modes.status != Status::converged)
    throw NumericalFailure("sensitivities: the modes of the air in a body did not converge; take a finer mesh");
  return modes;
}

/// The rotation among some modes that brings them nearest to others of the same span, both normalised by `mass`.
Eigen::MatrixXd nearest_turn(const SparseMatrix& mass, const Eigen::MatrixXd& modes, const Eigen::MatrixXd& to)
{
  const Eigen::MatrixXd products = modes.transpose() * symmetric_product(mass, to);
  const Eigen::JacobiSVD<Eigen::MatrixXd> svd(products, Eigen::ComputeFullU | Eigen::ComputeFullV);
  return svd.matrixU() * svd.matrixV().transpose();
}

Eigen::VectorXd of_pairs(const Eigen::MatrixXd& matrix, std::span<const VectorPair> pairs)
{
  Eigen::VectorXd values(static_cast<Eigen::Index>(pairs.size()));
  for (std::size_t k = 0; k < pairs.size(); ++k)
    values(static_cast<Eigen::Index>(k)) = matrix(pairs[k].first, pairs[k].second);
  return values;
}

} // namespace

bool same_outlines(const std::vector<HoleOutline>& a, const std::vector<HoleOutline>& b)
{
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const HoleOutline& one, const HoleOutline& other) { return one.points == other.points; });
}

bool same_air(const BodyPoint& a, const BodyPoint& b)
{
  const CavityMesh& one = a.air.cavity;
  const CavityMesh& other = b.air.cavity;
  return a.air.air.density == b.air.air.density && a.air.air.sound_speed == b.air.air.sound_speed &&
         a.air.solids == b.air.solids && one.planform.nodes == other.planform.nodes && one.back == other.back &&
         one.top == other.top && same_holes(a.air.holes, b.air.holes) &&
         std::equal(a.body.parts.begin(), a.body.parts.end(), b.body.parts.begin(), b.body.parts.end(), same_wall);
}

BodyAirForms::BodyAirForms(const SolvedBody& solved, Eigen::Index count, int degree)
    : solved_(solved), degree_(degree), outflow_(solved.modes.coupled.outflow.leftCols(count)),
      cavity_(solved.modes.coupled.cavity.leftCols(count))
{
  for (const PartSystem& part : solved.system.parts)
  {
    const Eigen::MatrixXd own = part.from_body * solved.modes.shapes.leftCols(count);
    Eigen::MatrixXd& u = displacements_.emplace_back(3 * static_cast<Eigen::Index>(part.dofs.equation.size()), count);
    for (Eigen::Index i = 0; i < count; ++i)
      u.col(i) = nodal_displacements(part.dofs, own.col(i)).reshaped();
  }
  const CavitySpace space(solved.point.air.cavity, degree);
  // With the tolerance that the coupled modes were made with, so that signs and mixtures are those of `cavity_`.
  cavity_shapes_ =
      solve_cavity_modes(space, solved.point.air.air, {.num_modes = static_cast<int>(cavity_.rows())}).shapes;
}

Eigen::MatrixXd BodyAirForms::wall_flow_of(const BodyPoint& point, const CavitySpace& space) const
{
  Eigen::MatrixXd flow = Eigen::MatrixXd::Zero(space.num_unknowns(), outflow_.cols());
  for (std::size_t p = 0; p < point.body.parts.size(); ++p)
  {
    const BodyPart& part = point.body.parts[p];
    // Displacements stay as they are in the axes of the body.
    const Eigen::Matrix3d turn = part.placement.linear().transpose() * solved_.point.body.parts[p].placement.linear();
    Eigen::MatrixXd u = displacements_[p];
    for (Eigen::Index i = 0; i < u.cols(); ++i)
    {
      const Eigen::Matrix3Xd turned = turn * displacements_[p].col(i).reshaped(3, u.rows() / 3);
      u.col(i) = turned.reshaped();
    }
    flow += wall_flow(
        space, {.mesh = &part.model.mesh, .side = point.air.sides[p], .outward = 1.0, .placement = part.placement}, u);
  }
  return flow;
}

AirForms BodyAirForms::at(const BodyPoint& point, std::span<const VectorPair> pairs) const
{
  const Air& air = point.air.air;
  const CavitySpace space(point.air.cavity, degree_);
  const CavityModes modes = cavity_modes(space, air, cavity_.rows());
  Eigen::MatrixXd flow = wall_flow_of(point, space);
  Eigen::MatrixXd inertia = Eigen::MatrixXd::Zero(outflow_.cols(), outflow_.cols()); // over density
  if (outflow_.rows() > 0)
  {
    const HolesInCavity holes = holes_in_cavity(space, hole_flow(point.air.holes));
    flow += holes.flow * outflow_;
    inertia = outflow_.transpose() * holes.inertance * outflow_;
  }
  const AirMoments moments = air_moments(space, modes, flow);
  inertia += moments.inertance;
  const Eigen::MatrixXd q = nearest_turn(space.value_form(), modes.shapes, cavity_shapes_) * cavity_;
  const Eigen::VectorXd w = 2.0 * std::numbers::pi * modes.frequencies_hz;
  const double spring = air.density * air.sound_speed * air.sound_speed / (space.volume() - point.air.solids);
  const Eigen::MatrixXd K = spring * moments.volume_change * moments.volume_change.transpose() +
                            q.transpose() * w.cwiseAbs2().asDiagonal() * q;
  const Eigen::MatrixXd across =
      std::sqrt(air.density) * q.transpose() * (air.sound_speed * w.cwiseInverse()).asDiagonal() * moments.b;
  const Eigen::MatrixXd M = air.density * inertia + q.transpose() * q - across - across.transpose();
  return {.stiffness = of_pairs(K, pairs), .mass = of_pairs(M, pairs)};
}

} // namespace plate::sensitivity
