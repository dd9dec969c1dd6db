// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/body.h>

#include "body_nodes.h"
#include "sparse_sum.h"
#include "strut_matrices.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{

namespace
{

/// What belongs to a pair of nodes or places; it needs no memory of its own.
using Block = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, 6, 6>;

/// Unknowns of one node of a part within its own system, and from those of its place.
struct Member
{
  int place;                  // index into BodyNodes::nodes
  std::vector<int> equations; // of the place
  std::vector<int> own;       // of the part, ascending, held ones left out
  Block rows;                 // (own.size(), equations.size())
};

std::vector<Member> members_of(const Body& body, std::size_t p, const BodyNodes& nodes, const DofMap& dofs,
                               const DofMap& own)
{
  std::vector<Member> members;
  for (std::size_t i = 0; i < own.equation.size(); ++i)
  {
    const int n = nodes.of_part[p][i];
    const BodyNode& place = nodes.nodes[static_cast<std::size_t>(n)];
    Member member = {.place = n, .equations = equations_at(dofs, place, n), .own = {}, .rows = {}};
    const MemberRows rows = member_rows(body.parts[p], static_cast<int>(i), place);
    member.rows.resize(rows.rows(), rows.cols());
    for (std::size_t k = 0; k < own.equation[i].size(); ++k)
      if (own.equation[i][k] != DofMap::held)
      {
        member.rows.row(static_cast<Eigen::Index>(member.own.size())) = rows.row(static_cast<Eigen::Index>(k));
        member.own.push_back(own.equation[i][k]);
      }
    member.rows.conservativeResize(static_cast<Eigen::Index>(member.own.size()), Eigen::NoChange);
    members.push_back(std::move(member));
  }
  return members;
}

/// Adds a block and its transpose, or a symmetric block on the diagonal, to a lower triangle.
void add_block(SparseMatrix& A, const std::vector<int>& rows, const std::vector<int>& columns,
               const Eigen::Ref<const Eigen::MatrixXd>& block)
{
  const int* inner = A.innerIndexPtr();
  for (std::size_t c = 0; c < columns.size(); ++c)
  {
    if (columns[c] == DofMap::held)
      continue;
    const int* begin = inner + A.outerIndexPtr()[columns[c]];
    const int* end = inner + A.outerIndexPtr()[columns[c] + 1];
    for (std::size_t r = 0; r < rows.size(); ++r)
      if (rows[r] >= columns[c])
      {
        begin = std::lower_bound(begin, end, rows[r]);
        A.valuePtr()[begin - inner] += block(static_cast<Eigen::Index>(r), static_cast<Eigen::Index>(c));
      }
  }
}

/// Adds what two nodes of a part have in common.
void add_pair(SparseMatrix& A, const Member& row, const Member& column, const Block& own)
{
  const Block half = row.rows.transpose() * own;
  const Block block = half * column.rows;
  if (row.place > column.place)
    add_block(A, row.equations, column.equations, block);
  else if (row.place < column.place)
    add_block(A, column.equations, row.equations, Block(block.transpose()));
  else if (&row == &column)
    add_block(A, row.equations, column.equations, block);
  else // two nodes of a part in one joint
    add_block(A, row.equations, column.equations, Block(block + Block(block.transpose())));
}

/// Adds a matrix of a part to that of the body.
void add_part(const std::vector<Member>& members, const SparseMatrix& own, SparseMatrix& A)
{
  std::vector<int> node_of(static_cast<std::size_t>(own.rows()));
  for (std::size_t i = 0; i < members.size(); ++i)
    for (const int equation : members[i].own)
      node_of[static_cast<std::size_t>(equation)] = static_cast<int>(i);
  const int* inner = own.innerIndexPtr();
  const int* outer = own.outerIndexPtr();
  for (const Member& column : members)
  {
    if (column.own.empty())
      continue;
    const auto width = static_cast<Eigen::Index>(column.own.size());
    // The columns of a node hold the same rows, but for those above the diagonal (sparse_sum::lower_pattern).
    const int first = outer[column.own.front()];
    const int last = outer[column.own.front() + 1];
    for (int at = first; at < last;)
    {
      const Member& row = members[static_cast<std::size_t>(node_of[static_cast<std::size_t>(inner[at])])];
      const auto height = static_cast<Eigen::Index>(row.own.size());
      Block block(height, width);
      for (Eigen::Index c = 0; c < width; ++c)
        for (Eigen::Index r = &row == &column ? c : 0; r < height; ++r)
          block(r, c) = own.valuePtr()[outer[column.own[static_cast<std::size_t>(c)]] + (at - first) + r - c];
      if (&row == &column)
        block.triangularView<Eigen::StrictlyUpper>() = Block(block.transpose());
      add_pair(A, row, column, block);
      at += static_cast<int>(height);
    }
  }
}

SparseMatrix from_body(const std::vector<Member>& members, int own_unknowns, int body_unknowns)
{
  std::vector<Eigen::Triplet<double>> entries;
  for (const Member& member : members)
    for (Eigen::Index r = 0; r < member.rows.rows(); ++r)
      for (Eigen::Index c = 0; c < member.rows.cols(); ++c)
        if (const int equation = member.equations[static_cast<std::size_t>(c)];
            equation != DofMap::held && member.rows(r, c) != 0.0)
          entries.emplace_back(member.own[static_cast<std::size_t>(r)], equation, member.rows(r, c));
  SparseMatrix T(own_unknowns, body_unknowns);
  T.setFromTriplets(entries.begin(), entries.end());
  return T;
}

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
