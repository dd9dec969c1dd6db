// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "output_folder.h"

#include <plate/assembly/body.h>
#include <plate/meshes/vtk_file.h>

#include <functional>

namespace plate
{

/// Writes each part of a body in its place as NAME.vtu; further ones of a name are numbered.
///
/// @param fields  of the part of an index, vectors in the axes of the body
void write_part_files(const OutputFolder& folder, const Body& body,
                      const std::function<VtkFields(std::size_t)>& fields);

} // namespace plate
