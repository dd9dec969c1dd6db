// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/validation/reference_case.h>

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace plate::validation
{

/// Computed values by quantity, in the unit that its name has.
using Values = std::map<std::string, double>;

/// How our code computes a case.
struct CaseModel
{
  std::string name;
  std::function<Values(const ReferenceCase&)> compute; ///< @throws NumericalFailure
};

/// The model of a case. @throws InvalidInput if there is none
[[nodiscard]] const CaseModel& model_of(const std::string& name);

// One function per file of cases/.
[[nodiscard]] std::vector<CaseModel> thin_plates();
[[nodiscard]] std::vector<CaseModel> orthotropic_plates();
[[nodiscard]] std::vector<CaseModel> first_order_plates();
[[nodiscard]] std::vector<CaseModel> carved_and_laid();
[[nodiscard]] std::vector<CaseModel> laminated_plates();
[[nodiscard]] std::vector<CaseModel> plate_bending();
[[nodiscard]] std::vector<CaseModel> shell_bending();
[[nodiscard]] std::vector<CaseModel> loaded_plates();
[[nodiscard]] std::vector<CaseModel> ply_stresses();
[[nodiscard]] std::vector<CaseModel> shell_modes();
[[nodiscard]] std::vector<CaseModel> folded_plates();
[[nodiscard]] std::vector<CaseModel> measured_plates();
[[nodiscard]] std::vector<CaseModel> formulas();
[[nodiscard]] std::vector<CaseModel> enclosed_air();
[[nodiscard]] std::vector<CaseModel> air_and_structure();
[[nodiscard]] std::vector<CaseModel> mobilities();

} // namespace plate::validation
