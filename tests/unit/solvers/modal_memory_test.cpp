// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/modal_memory.h>

#include <doctest/doctest.h>

using namespace plate;

TEST_CASE("memory is told within a fifth of the peaks that GNU time measured")
{
  // `plate modes` on the carved viola top of examples/viola at mesh.size 12, 6, 3 and 2 mm, with --count 12 and 60;
  // maximum resident set size, one thread, CHOLMOD 5.12, Debian 12. Measured by us.
  struct Peak
  {
    double unknowns;
    int modes;
    double megabytes;
  };
  constexpr Peak peaks[] = {{55990, 12, 316.6},   {55990, 60, 372.3},   {122815, 12, 608.9},  {122815, 60, 832.6},
                            {405400, 12, 1870.0}, {405400, 60, 2513.1}, {876895, 12, 4216.2}, {876895, 60, 5546.8}};
  for (const Peak& peak : peaks)
  {
    CAPTURE(peak.unknowns);
    CAPTURE(peak.modes);
    CHECK(modal_memory(peak.unknowns, peak.modes) > 0.8e6 * peak.megabytes);
    CHECK(modal_memory(peak.unknowns, peak.modes) < 1.2e6 * peak.megabytes);
  }
}

TEST_CASE("what no machine has is told too")
{
  CHECK(modal_memory(1e9, 12) > 1e12);
}
