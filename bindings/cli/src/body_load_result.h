// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "knock_down.h"
#include "shared_cases.h"

#include <plate/design/body_design.h>
#include <plate/design/build_body.h>
#include <plate/design/load_design.h>
#include <plate/solvers/studies/body_load.h>

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// The parts of one name under one load: where they use most of their strength.
struct PartMargin
{
  std::string name;     ///< "top", "back", "ribs", "linings", "blocks"
  std::size_t part = 0; ///< index into Body::parts
  std::vector<AppliedFactor> knock_downs = {};
};

/// One body under its loads.
struct BodyLoadResult
{
  BodyDesign design;
  BodyLoadDesign load;
  BodyLoadSetup setup;
  BodyModel model; ///< the study points into its materials
  BodyLoadStudy study;
  std::vector<std::vector<PartMargin>> margins; ///< for each case, of the parts that are judged
  double seconds = 0.0;                         ///< [s]
};

/// What the command load computes of bodies.
struct BodyLoadOutcome
{
  BodyLoadResult design;
  std::optional<BodyLoadResult> reference;
};

/// @throws InvalidInput if the body has no end blocks for the strings to pull at, else as study_load()
[[nodiscard]] BodyLoadResult compute_load(BodyDesign design, const BodyLoadDesign& load);

/// Strength of the part in a case.
[[nodiscard]] const StrengthMap& strength_of(const BodyLoadResult& result, std::size_t load_case,
                                             const PartMargin& part);

/// The part of a case that uses most of its strength; none is judged without stress.
[[nodiscard]] const PartMargin* worst_part(const BodyLoadResult& result, std::size_t load_case);

/// The least margin of a case after the knock-downs of each part.
[[nodiscard]] double reduced_margin(const BodyLoadResult& result, std::size_t load_case);

[[nodiscard]] std::vector<SharedCase> shared_cases(const BodyLoadResult& result, const BodyLoadResult& reference);

/// Where a node of a part lies, in the axes of the body [m].
[[nodiscard]] Eigen::Vector3d place_of(const BodyModel& model, const PartNode& node);

} // namespace plate
