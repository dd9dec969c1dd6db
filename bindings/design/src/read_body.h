// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "table_reader.h"

#include <plate/design/body_design.h>

#include <string>

namespace plate
{

/// Reads a body between two plates.
///
/// @param root  table of the body's file
/// @throws DesignError for the first contradiction
[[nodiscard]] BodyDesign read_body(const TableReader& root, const std::string& title, Design top, Design back);

/// Checks that a plate's file holds no table of a body's.
void check_plate_tables(const TableReader& root);

} // namespace plate
