// SPDX-License-Identifier: MPL-2.0
#include "match_trial.h"

#include <plate/core/threads.h>

#include <doctest/doctest.h>

#include <iostream>

using namespace plate;
using namespace plate::test;

TEST_CASE("of ten hidden stacks at least nine are found again")
{
  set_num_threads(2);
  int found = 0;
  for (unsigned seed = 1; seed <= 10; ++seed)
  {
    const Trial one = trial(seed, true);
    CHECK(one.result.num_considered >= 100000);
    CHECK(one.result.num_reduced >= 20000);
    std::cout << "trial " << seed << ": " << one.greatest_cents << " cents, " << one.seconds << " s\n" << std::flush;
    found += one.greatest_cents < 2.0 ? 1 : 0;
  }
  set_num_threads(1);
  CHECK(found >= 9);
}
