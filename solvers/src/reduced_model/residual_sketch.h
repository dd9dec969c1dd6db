// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "element_forms.h"

#include <plate/assembly/assemble.h>

namespace plate::reduced
{

/// Random fields z with mean zero and covariance A^-1, where A = K + shift M: the mean of (z . r)^2 is r . A^-1 r.
///
/// So products of a few dozen such fields with a residual give its norm in energy within a fifth, at the cost of a few
/// numbers per term of stiffness and mass, and without the cancellation of squared norms. z = A^-1 w with w made of the
/// factors of the element matrices. The same on every run.
/// @param model   without point masses
/// @param system  assembled of it
/// @param shift   positive [1/s2]
/// @source [Balabanov2019] sec. 3, with the covariance in place of the square root of A
[[nodiscard]] Vectors energy_fields(const Model& model, const System& system, double shift, Eigen::Index count);

} // namespace plate::reduced
