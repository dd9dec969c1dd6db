// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/validation/reference_case.h>

#include <string>
#include <vector>

namespace plate::validation
{

/// One value beside ours.
struct Comparison
{
  std::string quantity;
  double reference;
  double computed;           ///< NaN if the computation failed
  double difference_percent; ///< of the reference; for a quantity in percent computed less reference
  double tolerance_percent;
  bool pass;
};

/// What became of one case.
struct CaseResult
{
  const ReferenceCase* reference; ///< an entry of reference_cases()
  std::vector<Comparison> comparisons;
  std::string failure; ///< why nothing was computed; empty if something was
};

/// Computes one case. A computation that fails is a result, not an exception.
///
/// @throws InvalidInput if there is no model for the case or it lacks a quantity
[[nodiscard]] CaseResult run_case(const ReferenceCase& reference);

/// The value that is nearest to its tolerance or furthest beyond it.
[[nodiscard]] const Comparison& worst(const CaseResult& result);

/// Whether all values of a case are within their tolerances.
[[nodiscard]] bool passed(const CaseResult& result);

} // namespace plate::validation
