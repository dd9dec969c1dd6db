// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

namespace plate::validation
{

/// A closed sphere [m]: the eight faces of an octahedron cut n by n and blown up.
[[nodiscard]] ShellMesh sphere(double radius, double thickness, int n);

} // namespace plate::validation
