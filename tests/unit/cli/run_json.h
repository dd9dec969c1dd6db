// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace plate::test
{

/// Runs plate with --json, which must succeed, and reads what it says.
inline nlohmann::json run_json(std::vector<std::string> arguments)
{
  arguments.emplace_back("--json");
  const Run run = run_plate(arguments);
  CAPTURE(run.err);
  REQUIRE(run.status == 0);
  return nlohmann::json::parse(run.out);
}

} // namespace plate::test
