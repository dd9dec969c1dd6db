// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>
#include <vector>

namespace plate::validation
{

/// A number somebody else has found.
struct ReferenceValue
{
  std::string quantity;     ///< with its unit, e.g. "f1_hz"; none where it is a bare number
  double value;             ///< in that unit
  double tolerance_percent; ///< largest difference allowed [% of the value]
};

/// Values that belong to one problem, with what is known of their origin. Data: tests/reference/data.
struct ReferenceCase
{
  std::string name;
  std::string topic;  ///< heading under which it is listed
  std::string source; ///< key in tests/BIBLIOGRAPHY.md
  std::string where;  ///< table, page or section there; empty if not known
  std::string mark;   ///< "published", "recomputed" (independently, for this project) or "from memory"
  std::string theory; ///< of the values, e.g. "thin plate"
  std::string reason; ///< of the tolerance
  std::vector<ReferenceValue> values;
};

/// All cases, in the order in which they are listed.
///
/// @throws IoError if the data compiled in are inconsistent
[[nodiscard]] const std::vector<ReferenceCase>& reference_cases();

} // namespace plate::validation
