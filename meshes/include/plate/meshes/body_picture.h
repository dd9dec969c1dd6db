// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/meshes/picture.h>

#include <filesystem>
#include <span>
#include <string>
#include <vector>

namespace plate
{

/// A closed body to be drawn: both plates from outside, and the air from above.
struct BodyView
{
  PlateView top;  ///< its title names the body
  PlateView back; ///< seen from behind
  PlateView air;  ///< its mesh is the planform of the cavity, seen like the top
};

/// A mode of a body. Both plates share one scale: the largest displacement becomes 1 or -1.
struct BodyModePicture
{
  int number = 0;
  double frequency_hz = 0.0;         ///< [Hz]
  std::string name = {};             ///< A0, A1, CBR, B1-, B1+ or empty
  double loss = 0.0;                 ///< loss factor [-]
  double air_share = 0.0;            ///< of its energy [-]
  std::vector<double> top = {};      ///< (num_nodes), positive outward, any scale [-]
  std::vector<double> back = {};     ///< (num_nodes), positive outward, same scale [-]
  std::vector<double> pressure = {}; ///< (num_nodes), any scale; empty: not shown [-]
};

/// Modes of a body on one sheet, top and back side by side, the pressure beside them where it is given.
///
/// Format, errors and repeatability as in picture.h; InvalidInput also if there are no modes.
void write_body_sheet(const std::filesystem::path& path, const BodyView& view, std::span<const BodyModePicture> modes);

} // namespace plate
