// SPDX-License-Identifier: MPL-2.0
#include "checked_design.h"

#include "fits_report.h"
#include "run_limits.h"

#include <plate/core/error.h>
#include <plate/design/design_error.h>

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

BodyDesign checked_body(const BodyDocument& document, int num_modes)
{
  BodyDesign design = document.design();
  if (const std::size_t holes = design.back.geometry.soundholes.size(); holes > 0)
    throw DesignError(message(document.place("body.back"), ": the back has ", holes,
                              " entries of [[soundhole]]; air leaves a body through the top alone: leave them out"));
  check_run(document, design, num_modes, run_limits());
  std::cerr << outlier_warnings(design.top.fits) << outlier_warnings(design.back.fits);
  return design;
}

} // namespace plate
