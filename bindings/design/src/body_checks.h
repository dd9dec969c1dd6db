// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "table_reader.h"

#include <plate/design/body_design.h>

namespace plate
{

/// Checks that plates, ribs, blocks and post fit each other.
///
/// @param root  table of the body's file
/// @throws DesignError naming the first key that does not
void check_body_parts(const TableReader& root, const BodyDesign& body);

} // namespace plate
