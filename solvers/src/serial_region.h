// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

/// Keeps what is called in its lifetime from opening OpenMP threads.
///
/// CHOLMOD asks for four of its own for small copies, whatever the user chose: on two cores they cost more time waiting
/// for each other than they save (measured, benchmarks/README.md). Nothing happens where no OpenMP is loaded.
class SerialRegion
{
public:
  SerialRegion();
  ~SerialRegion();
  SerialRegion(const SerialRegion&) = delete;
  SerialRegion& operator=(const SerialRegion&) = delete;

private:
  int levels_ = 0; // of nested threads allowed before
};

} // namespace plate
