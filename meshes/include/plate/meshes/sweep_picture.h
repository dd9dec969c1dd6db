// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/picture.h>

#include <filesystem>
#include <string>
#include <vector>

namespace plate
{

/// One mode followed over a sweep.
struct SweepTrack
{
  std::string name = {};                 ///< "M5", "mode 4"
  bool emphasised = false;               ///< drawn bold and in colour
  std::vector<double> frequency_hz = {}; ///< (num_values); NaN where the mode was not found [Hz]
  std::vector<double> first_shape =
      {};                              ///< (num_nodes) normal displacement at the first value; empty for no picture [-]
  std::vector<double> last_shape = {}; ///< (num_nodes) normal displacement at the last value; empty for no picture [-]
};

/// Modes against a key of the design.
struct SweepCurves
{
  std::string title = {};
  std::string key = {};            ///< label of the horizontal axis with its unit, e.g. "arching.height, mm"
  std::vector<double> values = {}; ///< of the key, ascending, at least two [as in `key`]
  std::vector<SweepTrack> tracks = {};
  std::vector<double> mass = {}; ///< (num_values); empty for no mass panel [kg]
};

/// Frequency against the key, one curve for each track with mode pictures at its ends, the mass in a panel below.
///
/// The view gives the mesh of the mode pictures. Format, errors and repeatability as in picture.h.
void write_sweep_picture(const std::filesystem::path& path, const PlateView& view, const SweepCurves& sweep);

} // namespace plate
