// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>
#include <vector>

namespace plate::test
{

/// A plate of the study, as a design file; all data invented.
struct StudyCase
{
  std::string name;
  std::string design;
};

/// Plates of all kinds: flat and arched wood, laid and carved, thin carbon, sandwich, with holes, bar, patch, mass,
/// held.
[[nodiscard]] std::vector<StudyCase> study_cases();

} // namespace plate::test
