// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/body_loads.h>

#include "body_members.h"
#include "strut_matrices.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Eigen/Geometry>

#include <algorithm>

namespace plate
{

namespace
{

using Vector6 = Eigen::Matrix<double, 6, 1>;

/// Middle of nodes and their spread about it, weighted: sum w (r.r - r rT).
struct Spread
{
  Eigen::VectorXd shares; // of the nodes, adding up to one
  Eigen::Vector3d middle = Eigen::Vector3d::Zero();
  Eigen::Matrix3d about = Eigen::Matrix3d::Zero();
};

Spread spread_of(const ShellMesh& mesh, const std::vector<int>& nodes)
{
  const Eigen::VectorXd areas = nodal_areas(mesh);
  Spread out = {.shares = Eigen::VectorXd(static_cast<Eigen::Index>(nodes.size()))};
  for (std::size_t i = 0; i < nodes.size(); ++i)
    out.shares(static_cast<Eigen::Index>(i)) = areas(nodes[i]);
  out.shares /= out.shares.sum();
  const auto position = [&](std::size_t i) { return mesh.nodes[static_cast<std::size_t>(nodes[i])]; };
  for (std::size_t i = 0; i < nodes.size(); ++i)
    out.middle += out.shares(static_cast<Eigen::Index>(i)) * position(i);
  for (std::size_t i = 0; i < nodes.size(); ++i)
  {
    const Eigen::Vector3d r = position(i) - out.middle;
    out.about +=
        out.shares(static_cast<Eigen::Index>(i)) * (r.squaredNorm() * Eigen::Matrix3d::Identity() - r * r.transpose());
  }
  return out;
}

void check(const Body& body, const RigidForce& load)
{
  if (load.part >= body.parts.size())
    throw InvalidInput(message("body: a force acts on part ", load.part, "; there are ", body.parts.size()));
  const std::size_t num_nodes = body.parts[load.part].model.mesh.nodes.size();
  for (const int node : load.nodes)
    if (node < 0 || static_cast<std::size_t>(node) >= num_nodes)
      throw InvalidInput(
          message("body: a force acts on node ", node, " of ", body.parts[load.part].name, ", which has ", num_nodes));
  if (load.nodes.size() < 3)
    throw InvalidInput(message("body: a force must act on three nodes or more of ", body.parts[load.part].name,
                               "; got ", load.nodes.size()));
}

/// Unknowns of the places of a strut, held ones zero.
Eigen::VectorXd at_places(const BodyNodes& nodes, const DofMap& dofs, const std::vector<int>& places,
                          const Eigen::Ref<const Eigen::VectorXd>& x)
{
  std::vector<double> values;
  for (const int n : places)
    for (const int equation : equations_at(dofs, nodes.nodes[static_cast<std::size_t>(n)], n))
      values.push_back(equation == DofMap::held ? 0.0 : x(equation));
  return Eigen::Map<const Eigen::VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

/// Displacements of some parts in the axes of the body, each node's by the root of its area, one below the other.
Eigen::VectorXd weighted_displacements(const Body& body, const BodySystem& system, std::span<const std::size_t> parts,
                                       const Eigen::Ref<const Eigen::VectorXd>& x)
{
  std::vector<double> values;
  for (const std::size_t p : parts)
  {
    const Eigen::Matrix3Xd u =
        body.parts[p].placement.linear() * nodal_displacements(system.parts[p].dofs, system.parts[p].from_body * x);
    const Eigen::Matrix3Xd weighted = u * nodal_areas(body.parts[p].model.mesh).cwiseSqrt().asDiagonal();
    values.insert(values.end(), weighted.data(), weighted.data() + weighted.size());
  }
  return Eigen::Map<const Eigen::VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

} // namespace

PartUnknowns no_load(const Body& body)
{
  PartUnknowns forces;
  for (const BodyPart& part : body.parts)
    forces.push_back(
        NodalUnknowns::Zero(DofMap::dofs_per_node, static_cast<Eigen::Index>(part.model.mesh.nodes.size())));
  return forces;
}

void add_load(const Body& body, const RigidForce& load, PartUnknowns& forces)
{
  check(body, load);
  const BodyPart& part = body.parts[load.part];
  const Spread spread = spread_of(part.model.mesh, load.nodes);
  constexpr double line = 1e-9; // least over greatest moment of nodes that lie on one
  const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> moments(spread.about, Eigen::EigenvaluesOnly);
  if (!(moments.eigenvalues()(0) > line * moments.eigenvalues()(2)))
    throw InvalidInput(message("body: the ", load.nodes.size(), " nodes of ", part.name,
                               " that a force acts on lie on one line; take more of them"));
  const Eigen::Vector3d force = part.placement.linear().transpose() * load.force;
  const Eigen::Vector3d moment = (part.placement.inverse() * load.at - spread.middle).cross(force);
  const Eigen::Vector3d turn = spread.about.ldlt().solve(moment);
  for (std::size_t i = 0; i < load.nodes.size(); ++i)
  {
    const Eigen::Vector3d r = part.model.mesh.nodes[static_cast<std::size_t>(load.nodes[i])] - spread.middle;
    forces[load.part].col(load.nodes[i]).head<3>() +=
        spread.shares(static_cast<Eigen::Index>(i)) * (force + turn.cross(r));
  }
}

Eigen::VectorXd on_unknowns(const BodySystem& system, const PartUnknowns& forces)
{
  Eigen::VectorXd load = Eigen::VectorXd::Zero(system.system.dofs.num_equations);
  for (std::size_t p = 0; p < forces.size(); ++p)
    load += system.parts[p].from_body.transpose() * on_unknowns(system.parts[p].dofs, forces[p]);
  return load;
}

PartUnknowns at_nodes(const BodySystem& system, const Eigen::Ref<const Eigen::VectorXd>& x)
{
  PartUnknowns values;
  for (const PartSystem& part : system.parts)
    values.push_back(at_nodes(part.dofs, part.from_body * x));
  return values;
}

Eigen::Matrix<double, 6, 1> resultant(const Body& body, const PartUnknowns& forces)
{
  Vector6 sum = Vector6::Zero();
  for (std::size_t p = 0; p < forces.size(); ++p)
  {
    const Eigen::Isometry3d& placement = body.parts[p].placement;
    const Vector6 own = resultant(body.parts[p].model, forces[p]);
    const Eigen::Vector3d force = placement.linear() * own.head<3>();
    sum.head<3>() += force;
    sum.tail<3>() += placement.linear() * own.tail<3>() + placement.translation().cross(force);
  }
  return sum;
}

std::vector<Eigen::Vector3d> strut_forces(const Body& body, const BodySystem& system,
                                          const Eigen::Ref<const Eigen::VectorXd>& x)
{
  const BodyNodes nodes = body_nodes(body);
  std::vector<Eigen::Vector3d> forces;
  for (const Strut& strut : body.struts)
  {
    const StrutMatrices matrices = strut_matrices(body, nodes, strut);
    const Eigen::VectorXd on_feet =
        matrices.K * (matrices.motions * at_places(nodes, system.system.dofs, matrices.places, x));
    forces.push_back(-on_feet.head<3>());
  }
  return forces;
}

Eigen::VectorXd relative_to(const Body& body, const BodySystem& system, std::span<const std::size_t> rest,
                            const Eigen::Ref<const Eigen::VectorXd>& x)
{
  const Eigen::MatrixXd& motions = system.system.rigid_motions;
  if (motions.cols() == 0)
    return x;
  const Eigen::VectorXd moved = weighted_displacements(body, system, rest, x);
  Eigen::MatrixXd rigid(moved.size(), motions.cols());
  for (Eigen::Index k = 0; k < motions.cols(); ++k)
    rigid.col(k) = weighted_displacements(body, system, rest, motions.col(k));
  const Eigen::MatrixXd normal = rigid.transpose() * rigid;
  return x - motions * normal.ldlt().solve(rigid.transpose() * moved);
}

SparseMatrix geometric_stiffness(const Body& body, const BodySystem& system, const PartUnknowns& displacements)
{
  const BodyNodes nodes = body_nodes(body);
  SparseMatrix KG = system.system.K;
  std::fill(KG.valuePtr(), KG.valuePtr() + KG.nonZeros(), 0.0);
  for (std::size_t p = 0; p < body.parts.size(); ++p)
  {
    const DofMap& own = system.parts[p].dofs;
    add_part(members_of(body, p, nodes, system.system.dofs, own),
             geometric_stiffness(body.parts[p].model, own, displacements[p]), KG);
  }
  return KG;
}

} // namespace plate
