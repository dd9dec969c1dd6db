// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "table_reader.h"

#include <plate/assembly/model.h>

#include <vector>

namespace plate
{

/// Reads [support]: the edge groups of the mesh and how they are held; free edges are left out.
///
/// @param root       table of the whole file
/// @param rectangle  whether the outline has four sides of its own
[[nodiscard]] std::vector<SupportedEdge> read_support(const TableReader& root, bool rectangle);

} // namespace plate
