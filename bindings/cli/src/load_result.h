// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "knock_down.h"
#include "shared_cases.h"

#include <plate/assembly/model.h>
#include <plate/design/design.h>
#include <plate/design/load_design.h>
#include <plate/solvers/studies/load.h>

#include <optional>
#include <vector>

namespace plate
{

/// One design under its loads.
struct LoadResult
{
  Design design;
  LoadDesign load;
  LoadSetup setup;
  Model model; ///< the study points into its materials
  double mass; ///< [kg]
  LoadStudy study;
  std::vector<std::vector<AppliedFactor>> knock_downs; ///< for each case
  double seconds = 0.0;                                ///< [s]
};

/// What the command load computes.
struct LoadOutcome
{
  LoadResult design;
  std::optional<LoadResult> reference;
};

/// @param rim  of a plate whose design leaves its edge free
/// @throws as study_load()
[[nodiscard]] LoadResult compute_load(Design design, const LoadDesign& load, EdgeSupport rim);

/// Margin after all knock-downs of a case.
[[nodiscard]] double reduced_margin(const LoadResult& result, std::size_t load_case);

[[nodiscard]] std::vector<SharedCase> shared_cases(const LoadResult& result, const LoadResult& reference);

} // namespace plate
