// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <filesystem>
#include <span>
#include <string>
#include <vector>

namespace plate
{

/// A plate to be drawn, seen from outside: x of the plate points up (neck end), y to the left (bass side of a top).
///
/// The format of a picture follows the ending of its path, .svg or .png. A file appears complete or not at all, and
/// the same input gives the same bytes. All functions below throw InvalidInput for data that do not fit the mesh or
/// for another ending, and IoError if the file cannot be written.
struct PlateView
{
  const ShellMesh& mesh;             ///< must outlive the view
  std::string title = {};            ///< printed small above the picture, e.g. the title of the design
  std::string up = "neck end";       ///< label of the end at +x
  std::string left = "bass side";    ///< label of the side at +y; for a back "treble side"
  std::string right = "treble side"; ///< label of the side at -y
};

/// A mode shape to be drawn. It is scaled and signed for the picture: the largest displacement becomes +1, and among
/// equally large ones (within a millionth) the first node decides.
struct ModeShapePicture
{
  int number = 0;                               ///< elastic modes count from 1
  double frequency_hz = 0.0;                    ///< [Hz]
  std::string name = {};                        ///< M1, M2, M5 or empty
  std::vector<double> normal_displacement = {}; ///< (num_nodes), positive outward, any scale [-]
};

/// Component of a nodal vector field along the outward normals, (num_nodes) [unit of the field].
[[nodiscard]] std::vector<double> normal_displacement(const ShellMesh& mesh, std::span<const Eigen::Vector3d> field);

/// One mode: bands of normal displacement, nodal lines, + and - at the antinodes, the bar's footprint dashed.
void write_mode_picture(const std::filesystem::path& path, const PlateView& view, const ModeShapePicture& mode);

/// All modes on one sheet, each with number, frequency and name.
void write_contact_sheet(const std::filesystem::path& path, const PlateView& view,
                         std::span<const ModeShapePicture> modes);

/// Thickness in mm with labelled contours (every 0.1 or 0.2 mm on plates of usual graduation).
void write_thickness_map(const std::filesystem::path& path, const PlateView& view);

/// Height of the mid-surface above the rim in mm with labelled contours, one each millimetre on plates of usual arch.
void write_arching_map(const std::filesystem::path& path, const PlateView& view);

} // namespace plate
