// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

#include <iosfwd>
#include <string_view>

namespace plate
{

/// Writes a symmetric matrix in Matrix Market form: "coordinate real symmetric", counted from 1, column by column, each
/// number with the digits that give it back bit for bit. Entries that are exactly zero are left out.
///
/// @param lower    lower triangle
/// @param comment  lines put below the header, without their percent signs
/// @throws nothing itself; the state of the stream tells whether all was written
/// @source [Boisvert1996]; pinned by tests/unit/assembly/matrix_market_test.cpp
void write_matrix_market(std::ostream& out, const SparseMatrix& lower, std::string_view comment);

} // namespace plate
