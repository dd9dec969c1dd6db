// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/mesh/shell_mesh.h>

#include <Eigen/Core>

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace plate
{

/// A part of a plate to be outlined, e.g. a patch of further plies.
struct PlateRegion
{
  std::vector<Eigen::Vector2d> outline = {}; ///< corners (x, y), closed by itself, at least three [m]
  std::string label = {};                    ///< in the legend, e.g. "carbon patch, inside"
};

/// A place on a plate to be marked, e.g. a stuck-on mass.
struct MarkedPoint
{
  Eigen::Vector2d at = Eigen::Vector2d::Zero(); ///< (x, y) [m]
  std::string label = {};                       ///< beside the mark and in the legend, e.g. "5 g"
  std::string meaning = "stuck-on mass";        ///< in the legend, the same for all points of a view
};

/// A plate to be drawn, seen from outside: x of the plate points up (neck end), y to the left (bass side of a top).
///
/// The format of a picture follows the ending of its path, .svg or .png. A file appears complete or not at all, and
/// the same input gives the same bytes. All functions below throw InvalidInput for data that do not fit the mesh or
/// for another ending, and IoError if the file cannot be written.
struct PlateView
{
  const ShellMesh& mesh;                 ///< must outlive the view
  std::string title = {};                ///< printed above the picture, e.g. the title of the design
  std::string up = "neck end";           ///< label of the end at +x
  std::string left = "bass side";        ///< label of the side at +y; for a back "treble side"
  std::string right = "treble side";     ///< label of the side at -y
  std::vector<PlateRegion> regions = {}; ///< outlined thinly on all pictures of the plate
  std::vector<MarkedPoint> points = {};  ///< stuck-on masses, marked on all pictures of the plate
};

/// A mode shape to be drawn. It is scaled and signed for the picture: the largest displacement becomes +1, and among
/// equally large ones (within a millionth) the first node decides.
struct ModeShapePicture
{
  int number = 0;                               ///< elastic modes count from 1
  double frequency_hz = 0.0;                    ///< [Hz]
  std::string name = {};                        ///< M1, M2, M5 or empty
  std::optional<double> loss = {};              ///< loss factor; shown in % where there is one [-]
  std::vector<double> normal_displacement = {}; ///< (num_nodes), positive outward, any scale [-]
};

/// Component of a nodal vector field along the outward normals, (num_nodes) [unit of the field].
[[nodiscard]] std::vector<double> normal_displacement(const ShellMesh& mesh, std::span<const Eigen::Vector3d> field);

/// A mode's name as the trade says it: "M1 twist", "M2 X", "M5 ring"; other names as they are.
[[nodiscard]] std::string trade_name(const std::string& name);

/// One mode: normal displacement in colours, nodal lines, + and - at the antinodes, the bar's footprint dashed.
void write_mode_picture(const std::filesystem::path& path, const PlateView& view, const ModeShapePicture& mode);

/// All modes on one sheet at one scale, each with number, name, frequency and loss.
void write_contact_sheet(const std::filesystem::path& path, const PlateView& view,
                         std::span<const ModeShapePicture> modes);

/// Thickness in mm with labelled contours (every 0.1 or 0.2 mm on plates of usual graduation).
void write_thickness_map(const std::filesystem::path& path, const PlateView& view);

/// Height of the mid-surface above the rim in mm with labelled contours, one each millimetre on plates of usual arch.
void write_arching_map(const std::filesystem::path& path, const PlateView& view);

} // namespace plate
