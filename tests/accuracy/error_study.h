// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "study_cases.h"

#include <vector>

namespace plate::test
{

/// Error bars held against true errors.
struct BarCount
{
  int modes = 0;
  int covered = 0; ///< true error below the bar
  int tight = 0;   ///< bar less than ten times the true error
};

struct StudyOptions
{
  std::vector<double> size_factors; ///< on the default size of the plate
  double overkill;                  ///< the default size over that of the mesh which stands for the truth
  int num_modes;
};

/// Computes a plate at each size and prints each mode that is not covered; the truth is a mesh far finer, also in its
/// strips along the edges.
///
/// Differences that are rounding, below a millionth of the frequency, count as covered and tight.
[[nodiscard]] BarCount study_error_bars(const StudyCase& plate, const StudyOptions& options);

/// Studies all the plates, prints the two percentages of each and of all, and returns the sum.
[[nodiscard]] BarCount study_error_bars(const std::vector<StudyCase>& plates, const StudyOptions& options);

} // namespace plate::test
