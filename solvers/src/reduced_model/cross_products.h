// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "element_forms.h"

namespace plate::reduced
{

/// a^T b of two sets of many short rows, (columns of a, columns of b).
///
/// This product is most of what a basis costs that grows: its kernel has wide arithmetic where the processor has it.
[[nodiscard]] Eigen::MatrixXd cross_products(const Vectors& a, const Vectors& b);

} // namespace plate::reduced
