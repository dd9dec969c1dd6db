// SPDX-License-Identifier: MPL-2.0
#include "checked_design.h"

#include "fits_report.h"
#include "run_limits.h"

#include <iostream>

namespace plate
{

Design checked_design(const DesignDocument& document, int num_modes)
{
  Design design = document.design();
  check_run(document, design, num_modes, run_limits());
  std::cerr << outlier_warnings(design.fits);
  return design;
}

} // namespace plate
