// SPDX-License-Identifier: MPL-2.0
#include "body_members.h"

#include <algorithm>
#include <utility>

namespace plate
{

namespace
{

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

} // namespace

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

} // namespace plate
