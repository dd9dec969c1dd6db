// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>

namespace plate
{

[[nodiscard]] bool same_pattern(const SparseMatrix& a, const SparseMatrix& b);

/// A + factor * B; matrices of one assembly have one pattern, which is not worked out again.
[[nodiscard]] SparseMatrix combination(const SparseMatrix& A, double factor, const SparseMatrix& B);

} // namespace plate
