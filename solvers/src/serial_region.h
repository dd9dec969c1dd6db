// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

/// Keeps dense kernels that are called in its lifetime on one thread, as far as OpenBLAS or OpenMP serve them.
///
/// Their threads gain nothing for the small blocks here, change the last bits, and CHOLMOD asks for four of its own for
/// mere copies, which on two cores cost half the factorisation in waiting (measured, benchmarks/README.md).
class SerialRegion
{
public:
  SerialRegion();
  ~SerialRegion();
  SerialRegion(const SerialRegion&) = delete;
  SerialRegion& operator=(const SerialRegion&) = delete;

private:
  int levels_;  // of nested OpenMP threads allowed before
  int threads_; // of OpenBLAS before
};

} // namespace plate
