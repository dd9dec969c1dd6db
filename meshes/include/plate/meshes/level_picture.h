// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace plate
{

/// A level over frequency.
struct LevelCurve
{
  std::string label;
  std::vector<double> levels; ///< one for each frequency of the picture [dB]
};

/// A frequency to be marked.
struct MarkedFrequency
{
  double frequency_hz; ///< [Hz]
  std::string label;
};

/// Levels over frequency on a logarithmic axis.
struct LevelPicture
{
  std::string title;
  std::string quantity;             ///< of the upright axis, e.g. "mobility, dB re 1 s/kg"
  std::vector<double> frequency_hz; ///< ascending, at least two [Hz]
  std::vector<LevelCurve> curves;   ///< one to six
  std::vector<MarkedFrequency> marks = {};
  std::vector<std::string> notes = {}; ///< remarks below, e.g. what the curves of a reference belong to
};

/// Format, errors and repeatability as in picture.h; InvalidInput also if frequencies do not ascend or there is no
/// curve.
void write_level_picture(const std::filesystem::path& path, const LevelPicture& picture);

} // namespace plate
