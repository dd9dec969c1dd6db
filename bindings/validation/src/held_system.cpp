// SPDX-License-Identifier: MPL-2.0
#include "held_system.h"

#include <plate/core/error.h>
#include <plate/solvers/sparse_cholesky.h>

#include <Eigen/SVD>

#include <algorithm>

namespace plate::validation
{
namespace
{

constexpr int dofs_per_node = DofMap::dofs_per_node;

/// Unknowns of a free model stand node by node.
int unknown(std::size_t node, int k)
{
  return dofs_per_node * static_cast<int>(node) + k;
}

/// Entry of a node's own direction or turn in the model's unknowns.
double entry(const Hold& hold, int row, int column)
{
  if (row < 3 && column < 3)
    return hold.axes(row, column);
  return row == column ? 1.0 : 0.0;
}

SparseMatrix condensed(const SparseMatrix& lower, const SparseMatrix& T)
{
  const SparseMatrix full = lower.selfadjointView<Eigen::Lower>();
  const SparseMatrix reduced = T.transpose() * (full * T);
  return reduced.triangularView<Eigen::Lower>();
}

/// Combinations of the rigid motions that no held unknown feels.
Eigen::MatrixXd motions_left(const Eigen::MatrixXd& rigid, const SparseMatrix& T)
{
  const Eigen::VectorXd scale = rigid.colwise().norm();
  const Eigen::MatrixXd unit = rigid * scale.cwiseInverse().asDiagonal();
  const Eigen::MatrixXd kept = T.transpose() * unit;
  const Eigen::MatrixXd lost = unit - T * kept;
  const Eigen::JacobiSVD<Eigen::MatrixXd> svd(lost.transpose() * lost, Eigen::ComputeFullV);
  const auto num_felt = (svd.singularValues().array() > 1e-10).count(); // of motions of length 1
  return kept * svd.matrixV().rightCols(rigid.cols() - num_felt);
}

} // namespace

SparseMatrix condensed(const HeldSystem& held, const SparseMatrix& lower)
{
  return condensed(lower, held.to_model);
}

HeldSystem held_system(const Model& model, const HoldRule& rule)
{
  if (!model.supports.empty())
    throw InvalidInput(
        message("held_system: the model has ", model.supports.size(), " supports of its own; give them in the rule"));
  const System free = assemble(model);
  HeldSystem held;
  std::vector<Eigen::Triplet<double>> entries;
  DofMap& dofs = held.system.dofs;
  for (std::size_t node = 0; node < model.mesh.nodes.size(); ++node)
  {
    const Hold hold = rule(node, model.mesh.nodes[node]);
    auto& equations = dofs.equation.emplace_back();
    for (int k = 0; k < dofs_per_node; ++k)
    {
      const bool is_held = hold.held[static_cast<std::size_t>(k)];
      equations[static_cast<std::size_t>(k)] = is_held ? DofMap::held : dofs.num_equations++;
      for (int row = 0; row < dofs_per_node && !is_held; ++row)
        if (const double value = entry(hold, row, k); value != 0.0)
          entries.emplace_back(unknown(node, row), equations[static_cast<std::size_t>(k)], value);
    }
  }
  held.to_model.resize(free.dofs.num_equations, dofs.num_equations);
  held.to_model.setFromTriplets(entries.begin(), entries.end());
  held.system.K = condensed(free.K, held.to_model);
  held.system.M = condensed(free.M, held.to_model);
  held.system.rigid_motions = motions_left(free.rigid_motions, held.to_model);
  held.system.typical_frequency_hz = free.typical_frequency_hz;
  held.system.mass = free.mass;
  return held;
}

Eigen::Matrix3Xd deflection(const HeldSystem& held, const Eigen::VectorXd& load)
{
  const SparseCholesky factor(held.system.K, unknowns_by_node(held.system.dofs));
  Eigen::VectorXd x(held.system.dofs.num_equations);
  factor.solve(held.to_model.transpose() * load, x);
  const Eigen::VectorXd u = held.to_model * x;
  const auto num_nodes = static_cast<Eigen::Index>(held.system.dofs.equation.size());
  Eigen::Matrix3Xd nodes(3, num_nodes);
  for (Eigen::Index node = 0; node < num_nodes; ++node)
    nodes.col(node) = u.segment<3>(dofs_per_node * node);
  return nodes;
}

Eigen::VectorXd area_load(const Model& model, const std::function<Eigen::Vector3d(const Eigen::Vector3d&)>& pressure)
{
  const System free = assemble(model);
  Eigen::VectorXd field = Eigen::VectorXd::Zero(free.dofs.num_equations);
  for (std::size_t node = 0; node < model.mesh.nodes.size(); ++node)
    add_force(field, node, pressure(model.mesh.nodes[node]));
  return free.M.selfadjointView<Eigen::Lower>() * field / areal_mass(model.material.laminate);
}

void add_force(Eigen::VectorXd& load, std::size_t node, const Eigen::Vector3d& force)
{
  load.segment<3>(unknown(node, 0)) += force;
}

std::size_t node_at(const Model& model, const Eigen::Vector3d& point)
{
  const auto& nodes = model.mesh.nodes;
  const auto nearer = [&](const Eigen::Vector3d& a, const Eigen::Vector3d& b)
  { return (a - point).squaredNorm() < (b - point).squaredNorm(); };
  return static_cast<std::size_t>(std::min_element(nodes.begin(), nodes.end(), nearer) - nodes.begin());
}

std::vector<bool> nodes_of(const ShellMesh& mesh, const std::vector<std::string>& groups)
{
  std::vector<bool> found(mesh.nodes.size(), false);
  for (const EdgeGroup& group : mesh.boundary)
    if (std::find(groups.begin(), groups.end(), group.name) != groups.end())
      for (const auto& edge : group.edges)
        for (const int node : edge)
          found[static_cast<std::size_t>(node)] = true;
  return found;
}

} // namespace plate::validation
