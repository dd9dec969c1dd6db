// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace plate
{

/// A load that two designs have in common.
struct SharedCase
{
  struct Outcome
  {
    double deflection;     ///< [m]
    double margin;         ///< [-]
    double reduced_margin; ///< [-]
  };

  std::string name;
  Outcome here;
  Outcome reference;
};

/// Loads by the same name, in the order of the first result.
///
/// @param margin  of a case
template <class Result, class Margin>
[[nodiscard]] std::vector<SharedCase> shared_cases(const Result& result, const Result& reference, const Margin& margin)
{
  const auto outcome = [&](const Result& of, std::size_t i)
  {
    const auto& load = of.study.cases[i];
    return SharedCase::Outcome{
        .deflection = load.deflection, .margin = std::invoke(margin, load), .reduced_margin = reduced_margin(of, i)};
  };
  std::vector<SharedCase> shared;
  for (std::size_t i = 0; i < result.study.cases.size(); ++i)
    for (std::size_t j = 0; j < reference.study.cases.size(); ++j)
      if (const std::string& name = result.study.cases[i].name; name == reference.study.cases[j].name)
        shared.push_back({.name = name, .here = outcome(result, i), .reference = outcome(reference, j)});
  return shared;
}

} // namespace plate
