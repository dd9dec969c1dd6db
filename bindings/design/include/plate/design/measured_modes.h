// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// One mode as found on a real plate.
struct MeasuredMode
{
  int number;                               ///< among the elastic modes, from 1, ascending with the frequency
  std::string name;                         ///< "M1", "M2", "M5" or any other; empty for none
  double frequency_hz;                      ///< [Hz]
  std::optional<double> loss = {};          ///< loss factor [-]
  std::vector<Eigen::Vector2d> places = {}; ///< where the shape was taken, in the plate's axes; empty for no shape [m]
  Eigen::VectorXd displacement = {};        ///< along the outward normal at the places, any scale
};

/// A list of measured modes.
struct MeasuredModes
{
  std::string title;
  std::vector<MeasuredMode> modes; ///< at least one, ascending in number
  bool with_shapes = false;        ///< every mode has places, else none has
};

/// Fewest places that tell shapes apart: those of a rigid plate alone take three.
inline constexpr int fewest_measured_places = 6;

/// Reads measured modes.
///
/// A file that ends in .toml has `title` and tables [[mode]] with number, name, frequency_hz, loss_percent and points,
/// a list of [x, y, displacement] (mm, mm, any scale). Any other file is a table with a first line of names, of which
/// mode, name, frequency_hz and loss_percent are read, the others passed over. Only the frequency must be given.
/// @throws IoError      if the file cannot be read
/// @throws DesignError  with file and line: no modes, another unit, numbers out of range or order, shapes of some only
[[nodiscard]] MeasuredModes read_measured_modes(const std::filesystem::path& path);

/// The same from text. @param name  of the file, for messages; its ending says which kind it is
[[nodiscard]] MeasuredModes parse_measured_modes(std::string_view text, const std::string& name);

} // namespace plate
