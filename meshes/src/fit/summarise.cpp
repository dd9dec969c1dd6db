// SPDX-License-Identifier: MPL-2.0
#include "summarise.h"

#include <cmath>

namespace plate
{

FitReport summarise(std::span<const FitResidual> residuals, const std::vector<char>& used)
{
  FitReport report;
  double squares = 0.0;
  for (std::size_t i = 0; i < residuals.size(); ++i)
  {
    const FitResidual& r = residuals[i];
    if (used[i] == 0)
    {
      report.outliers.push_back(r);
      continue;
    }
    ++report.points;
    squares += r.residual * r.residual;
    if (std::abs(r.residual) >= std::abs(report.largest.residual))
      report.largest = r;
  }
  report.rms = std::sqrt(squares / static_cast<double>(report.points));
  return report;
}

} // namespace plate
