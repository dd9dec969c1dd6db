// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "modes_result.h"
#include "output_folder.h"

namespace plate
{

/// Writes stiffness.mtx and mass.mtx, the matrices that the modes were found from.
///
/// @throws IoError
void write_matrix_files(const OutputFolder& folder, const ModesResult& result);

} // namespace plate
