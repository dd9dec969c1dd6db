// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "compare_result.h"

#include <string>

namespace plate
{

/// The comparison as one table for each design, for the terminal.
[[nodiscard]] std::string compare_text(const CompareOutcome& outcome, bool timing);
/// The comparison as JSON; numbers have nine digits. A likeness is null where shapes are not known.
[[nodiscard]] std::string compare_json(const CompareOutcome& outcome, bool timing);
/// All pairs of all designs as CSV, one line each.
[[nodiscard]] std::string compare_csv(const CompareOutcome& outcome);

/// Radiation ratio along x and y [m4/(kg s)].
struct RadiationRatios
{
  double x;
  double y;
};
[[nodiscard]] RadiationRatios radiation_ratios(const LaminateResult& layup);

/// A name both modes have, or both names, "M2 / -"; empty if neither has one.
[[nodiscard]] std::string pair_name(const CompareOutcome& outcome, const ComparedDesign& design,
                                    const ComparedPair& pair);

} // namespace plate
