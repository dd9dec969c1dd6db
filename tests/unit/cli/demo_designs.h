// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace plate::test
{

/// The designs of the example, without folder and ending.
inline const std::vector<std::string> demo_designs = {"spruce_top", "laminate_top", "measured_top"};

inline std::string demo(const std::string& name)
{
  return std::string(EXAMPLES_DIR) + "/viola/" + name + ".toml";
}

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
