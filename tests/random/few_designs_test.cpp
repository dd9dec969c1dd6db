// SPDX-License-Identifier: MPL-2.0
#include "check_designs.h"

#include <doctest/doctest.h>

TEST_CASE("25 whole designs drawn at random end in modes or in a clear error")
{
  plate::test::check_designs(1000, 25);
}
