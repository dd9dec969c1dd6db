// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "text_style.h"

#include <Eigen/Core>

#include <string>
#include <vector>

namespace plate
{

/// Words set on a page.
struct PlacedText
{
  std::string words;
  Eigen::Vector2d anchor; ///< see TextStyle; picture units
  double width = 0.0;     ///< picture units
  TextStyle style;
};

/// Numbers surfaces and images of an SVG from 1 in the order of their appearance: Cairo counts them over the life of
/// the process, and equal pictures shall be equal bytes.
[[nodiscard]] std::string with_own_numbers(const std::string& svg);

/// Adds an invisible copy of all text: Cairo draws letters as outlines, which look the same anywhere but can be neither
/// searched, copied nor read aloud.
[[nodiscard]] std::string with_searchable_text(const std::string& svg, const std::vector<PlacedText>& texts);

} // namespace plate
