// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_nodes.h"

#include <plate/assembly/assemble.h>

#include <vector>

namespace plate
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

/// Those of all nodes of part `p`.
///
/// @param dofs  unknowns of the body
/// @param own   unknowns of the part's own model
[[nodiscard]] std::vector<Member> members_of(const Body& body, std::size_t p, const BodyNodes& nodes,
                                             const DofMap& dofs, const DofMap& own);

/// Adds a block and its transpose, or a symmetric block on the diagonal, to a lower triangle.
void add_block(SparseMatrix& A, const std::vector<int>& rows, const std::vector<int>& columns,
               const Eigen::Ref<const Eigen::MatrixXd>& block);

/// Adds a matrix of a part, lower triangle, to that of the body.
void add_part(const std::vector<Member>& members, const SparseMatrix& own, SparseMatrix& A);

/// Unknowns of a part from those of the body, (own_unknowns, body_unknowns).
[[nodiscard]] SparseMatrix from_body(const std::vector<Member>& members, int own_unknowns, int body_unknowns);

} // namespace plate
