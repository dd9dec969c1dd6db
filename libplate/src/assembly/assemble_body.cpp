// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/body.h>

#include "body_members.h"
#include "sparse_sum.h"
#include "strut_matrices.h"

#include <algorithm>
#include <utility>

namespace plate
{

namespace
{

/// Pattern of the body: places couple within triangles and between the feet of a strut.
SparseMatrix pattern_of(const Body& body, const BodyNodes& nodes, const DofMap& dofs,
                        const std::vector<StrutMatrices>& struts)
{
  std::vector<std::vector<int>> cliques;
  for (std::size_t p = 0; p < body.parts.size(); ++p)
    for (const auto& triangle : body.parts[p].model.mesh.triangles)
    {
      std::vector<int>& clique = cliques.emplace_back();
      for (const int node : triangle)
        clique.push_back(nodes.of_part[p][static_cast<std::size_t>(node)]);
    }
  for (const StrutMatrices& strut : struts)
    cliques.push_back(strut.places);
  return sparse_sum::zero_matrix(
      sparse_sum::lower_pattern(unknowns_by_node(dofs), sparse_sum::neighbours(nodes.nodes.size(), cliques)));
}

/// Adds a matrix on the motions of both feet.
void add_strut(const BodyNodes& nodes, const DofMap& dofs, const StrutMatrices& strut, const Eigen::MatrixXd& matrix,
               SparseMatrix& A)
{
  std::vector<int> equations;
  for (const int n : strut.places)
    for (const int equation : equations_at(dofs, nodes.nodes[static_cast<std::size_t>(n)], n))
      equations.push_back(equation);
  const Eigen::MatrixXd full = strut.motions.transpose() * matrix * strut.motions;
  add_block(A, equations, equations, full);
}

} // namespace

BodySystem assemble(const Body& body)
{
  const BodyNodes nodes = body_nodes(body);
  std::vector<System> own;
  std::vector<DofMap> part_dofs;
  for (const BodyPart& part : body.parts)
  {
    own.push_back(assemble(part.model));
    part_dofs.push_back(own.back().dofs);
  }
  BodySystem out;
  System& system = out.system;
  system.dofs = number_unknowns(body, nodes, part_dofs);
  std::vector<StrutMatrices> struts;
  for (const Strut& strut : body.struts)
    struts.push_back(strut_matrices(body, nodes, strut));
  for (const FixedMass& mass : body.masses)
    struts.push_back(mass_matrices(body, nodes, mass));
  system.K = pattern_of(body, nodes, system.dofs, struts);
  system.M = system.K;
  Eigen::Vector3d moment = Eigen::Vector3d::Zero();
  for (std::size_t p = 0; p < body.parts.size(); ++p)
  {
    const std::vector<Member> members = members_of(body, p, nodes, system.dofs, part_dofs[p]);
    add_part(members, own[p].K, system.K);
    add_part(members, own[p].M, system.M);
    out.parts.push_back({.dofs = part_dofs[p],
                         .from_body = from_body(members, part_dofs[p].num_equations, system.dofs.num_equations),
                         .K = std::move(own[p].K),
                         .M = std::move(own[p].M),
                         .mass = own[p].mass});
    system.typical_frequency_hz = std::max(system.typical_frequency_hz, own[p].typical_frequency_hz);
    system.mass += own[p].mass;
    moment += own[p].mass * (body.parts[p].placement * own[p].centre_of_gravity);
  }
  for (const StrutMatrices& strut : struts)
  {
    add_strut(nodes, system.dofs, strut, strut.K, system.K);
    add_strut(nodes, system.dofs, strut, strut.M, system.M);
    system.mass += strut.mass;
    moment += strut.mass * strut.centre;
  }
  system.centre_of_gravity = moment / system.mass;
  system.rigid_motions = rigid_motions(nodes, system.dofs);
  return out;
}

Eigen::MatrixXd energy_shares(const BodySystem& body, const Eigen::MatrixXd& shapes)
{
  const auto num_parts = static_cast<Eigen::Index>(body.parts.size());
  Eigen::MatrixXd shares(num_parts + 1, shapes.cols());
  const auto energies = [](const SparseMatrix& K, const Eigen::MatrixXd& u) -> Eigen::RowVectorXd
  { return u.cwiseProduct(K.selfadjointView<Eigen::Lower>() * u).colwise().sum(); };
  const Eigen::RowVectorXd all = energies(body.system.K, shapes);
  for (Eigen::Index p = 0; p < num_parts; ++p)
  {
    const PartSystem& part = body.parts[static_cast<std::size_t>(p)];
    shares.row(p) = energies(part.K, part.from_body * shapes).cwiseQuotient(all);
  }
  shares.row(num_parts) = Eigen::RowVectorXd::Ones(shapes.cols()) - shares.topRows(num_parts).colwise().sum();
  return shares;
}

} // namespace plate
