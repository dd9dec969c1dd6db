// SPDX-License-Identifier: MPL-2.0
#include <plate/validation/validate.h>

#include "case_models.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace plate::validation
{
namespace
{

bool in_percent(const std::string& quantity)
{
  constexpr std::string_view ending = "_percent";
  return quantity.size() > ending.size() &&
         quantity.compare(quantity.size() - ending.size(), ending.size(), ending) == 0;
}

Comparison compare(const ReferenceValue& reference, double computed)
{
  const double difference = in_percent(reference.quantity)
                                ? computed - reference.value
                                : 100.0 * (computed - reference.value) / std::abs(reference.value);
  return {.quantity = reference.quantity,
          .reference = reference.value,
          .computed = computed,
          .difference_percent = difference,
          .tolerance_percent = reference.tolerance_percent,
          .pass = std::abs(difference) <= reference.tolerance_percent}; // NaN does not pass
}

double value_of(const Values& values, const ReferenceCase& reference, const std::string& quantity)
{
  const auto found = values.find(quantity);
  if (found == values.end())
    throw InvalidInput(message("validation case ", reference.name, ": its model gives no ", quantity,
                               "; correct the data or the model"));
  return found->second;
}

} // namespace

CaseResult run_case(const ReferenceCase& reference)
{
  const CaseModel& model = model_of(reference.name);
  CaseResult result = {.reference = &reference, .comparisons = {}, .failure = {}};
  Values values;
  try
  {
    values = model.compute(reference);
  }
  catch (const NumericalFailure& failure)
  {
    result.failure = failure.what();
    for (const ReferenceValue& value : reference.values)
      values[value.quantity] = std::numeric_limits<double>::quiet_NaN();
  }
  for (const ReferenceValue& value : reference.values)
    result.comparisons.push_back(compare(value, value_of(values, reference, value.quantity)));
  return result;
}

const Comparison& worst(const CaseResult& result)
{
  return *std::max_element(result.comparisons.begin(), result.comparisons.end(),
                           [](const Comparison& a, const Comparison& b)
                           {
                             return std::abs(a.difference_percent) / a.tolerance_percent <
                                    std::abs(b.difference_percent) / b.tolerance_percent;
                           });
}

bool passed(const CaseResult& result)
{
  return std::all_of(result.comparisons.begin(), result.comparisons.end(),
                     [](const Comparison& comparison) { return comparison.pass; });
}

} // namespace plate::validation
