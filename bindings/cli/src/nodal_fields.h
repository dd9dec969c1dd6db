// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/vtk_file.h>

#include <Eigen/Core>

#include <string>
#include <vector>

namespace plate
{

/// Values as pictures and VTK files take them.
[[nodiscard]] std::vector<double> list_of(const Eigen::Ref<const Eigen::VectorXd>& values);

/// A number from 1 so that names sort as modes do: "03".
[[nodiscard]] std::string two_digits(Eigen::Index number);

/// Name of a mode among the fields of a VTK file: "mode 05 254.00 Hz M5".
///
/// @param number  from 1
[[nodiscard]] std::string mode_field_name(Eigen::Index number, double frequency_hz, const std::string& name);

/// The thickness of a plate in mm.
[[nodiscard]] NodalScalars thickness_field(const ShellMesh& mesh);

} // namespace plate
