// SPDX-License-Identifier: MPL-2.0
#include "case_models.h"

#include <plate/core/error.h>

#include <algorithm>

namespace plate::validation
{
namespace
{

std::vector<CaseModel> all_models()
{
  std::vector<CaseModel> all;
  for (const auto& models :
       {thin_plates(), orthotropic_plates(), first_order_plates(), carved_and_laid(), laminated_plates(),
        plate_bending(), shell_bending(), loaded_plates(), ply_stresses(), shell_modes(), folded_plates(),
        measured_plates(), formulas(), enclosed_air(), air_and_structure(), mobilities()})
    all.insert(all.end(), models.begin(), models.end());
  return all;
}

} // namespace

const CaseModel& model_of(const std::string& name)
{
  static const std::vector<CaseModel> models = all_models();
  const auto found = std::find_if(models.begin(), models.end(), [&](const CaseModel& m) { return m.name == name; });
  if (found == models.end())
    throw InvalidInput(message("validation case ", name, ": has values but no model; add it to bindings/validation"));
  return *found;
}

} // namespace plate::validation
