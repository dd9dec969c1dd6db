// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

/// Four numbers as one value, for kernels; arithmetic works element by element, on any processor.
///
/// Read and written through pointers to double: needs no more alignment than they have. Keep it in local variables: how
/// it would be passed to a function depends on the processor.
using FourDoubles [[gnu::vector_size(32), gnu::aligned(8), gnu::may_alias]] = double;

/// Kernels that gain from 256-bit arithmetic with fused multiply-add are compiled twice from one inlined body; which
/// one runs is decided at run time. On one machine it is always the same one, so results have the same bits; between
/// machines they differ by rounding.
#if defined(__x86_64__)
#define LIBPLATE_WIDE [[gnu::target("avx2,fma")]]
#else
#define LIBPLATE_WIDE
#endif

/// Whether the processor has it, and the environment variable LIBPLATE_NARROW is not set: with it the results are those
/// of a machine without.
[[nodiscard]] bool has_wide_arithmetic();

/// The body shared by both versions of a kernel, and what it calls.
#define LIBPLATE_INLINED [[gnu::always_inline]] inline

/// Four numbers in memory. A pointer: of a reference Clang would take the alignment of the whole vector for granted.
LIBPLATE_INLINED FourDoubles* four(double* p)
{
  return reinterpret_cast<FourDoubles*>(p);
}

LIBPLATE_INLINED const FourDoubles* four(const double* p)
{
  return reinterpret_cast<const FourDoubles*>(p);
}

} // namespace plate
