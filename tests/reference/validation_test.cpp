// SPDX-License-Identifier: MPL-2.0
// Every case of the validation: sources, tolerances and their reasons in data/.
#include <plate/validation/validate.h>

#include <doctest/doctest.h>

using namespace plate::validation;

TEST_CASE("all values of all cases are within their tolerances")
{
  for (const ReferenceCase& reference : reference_cases())
  {
    const CaseResult result = run_case(reference);
    CHECK_MESSAGE(result.failure.empty(), reference.name, ": ", result.failure);
    for (const Comparison& value : result.comparisons)
      CHECK_MESSAGE(value.pass, reference.name, " ", value.quantity, ": computed ", value.computed, ", reference ",
                    value.reference, ", difference ", value.difference_percent, " % of at most ",
                    value.tolerance_percent, " %");
    const Comparison& nearest = worst(result);
    MESSAGE(reference.name, ": ", nearest.difference_percent, " % of at most ", nearest.tolerance_percent, " %");
  }
}
