// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "run_plate.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

namespace plate::test
{

/// Checks that a run ends with status 2, one line on standard error that holds the text, and nothing on standard
/// output.
inline void check_refused(const Run& run, const std::string& text)
{
  CAPTURE(run.err);
  CAPTURE(text);
  CHECK(run.status == 2);
  CHECK(run.out.empty());
  CHECK(std::count(run.err.begin(), run.err.end(), '\n') == 1);
  CHECK(run.err.find(text) != std::string::npos);
}

} // namespace plate::test
