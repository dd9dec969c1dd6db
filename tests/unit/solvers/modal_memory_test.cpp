// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/modal_memory.h>

#include <doctest/doctest.h>

using namespace plate;

TEST_CASE("memory is told within a fifth of the peaks that GNU time measured")
{
  // `plate modes` on the carved viola top of examples/viola at mesh.size 12, 6 and 3 mm, with --count 12 and 60, error
  // bars included; maximum resident set size, one thread, CHOLMOD 5.12, Debian 12. Measured by us.
  struct Peak
  {
    double unknowns;
    int modes;
    double megabytes;
  };
  constexpr Peak peaks[] = {{55645, 12, 413.1},   {55645, 60, 472.5},   {122965, 12, 820.5},
                            {122965, 60, 1057.5}, {405205, 12, 2749.7}, {405205, 60, 3438.6}};
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
