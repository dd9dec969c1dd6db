// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>

#include <string>
#include <vector>

namespace plate::test
{

/// One row of a file in data/.
struct ReferenceValue
{
  std::string quantity;
  double value;
  double tolerance_percent;
};

/// Rows of a case in a file of data/, in the order of the file.
///
/// @throws IoError if the file cannot be read or has no such case
[[nodiscard]] std::vector<ReferenceValue> reference_values(const std::string& file, const std::string& name);

/// Modes of a plate checked against a case: mass_g and the rest in order, the frequencies multiplied by `scale`.
///
/// Residuals and rigid motions are checked too.
void check_modes(const Model& model, const std::string& file, const std::string& name, double scale = 1.0);

} // namespace plate::test
