// SPDX-License-Identifier: MPL-2.0
#pragma once

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

} // namespace plate::test
