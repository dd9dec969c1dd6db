// SPDX-License-Identifier: MPL-2.0
// What tests of `plate load` on plates and bodies share.
#pragma once

#include "run_plate.h"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace plate::test
{

inline nlohmann::json load_of(const std::string& file, std::vector<std::string> more = {})
{
  std::vector<std::string> arguments = {"load", file, "--json"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  const Run run = run_plate(arguments);
  CHECK(run.err == "");
  REQUIRE(run.status == 0);
  return nlohmann::json::parse(run.out);
}

inline const nlohmann::json& case_of(const nlohmann::json& result, const std::string& name)
{
  for (const nlohmann::json& entry : result.at("cases"))
    if (entry.at("case") == name)
      return entry;
  FAIL("no case " << name);
  return result;
}

inline bool holds(const std::string& text, const std::string& part)
{
  return text.find(part) != std::string::npos;
}

} // namespace plate::test
