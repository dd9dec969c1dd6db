// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "temporary_folder.h"

#include <doctest/doctest.h>

#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <numbers>
#include <regex>
#include <string>
#include <vector>

namespace plate::test
{

/// Words in a picture and the box they take, upright or turned by a quarter; other turns have a box around them.
struct WordBox
{
  std::string words;
  Eigen::Vector2d low;  ///< picture units
  Eigen::Vector2d high; ///< picture units
};

/// Reads the searchable text of an SVG picture.
inline std::vector<WordBox> words_in(const std::string& svg)
{
  constexpr double cap_height = 0.72; // of DejaVu Sans and its like, over the font size
  static const std::regex element(
      R"re(<text transform="translate\((\S+) (\S+)\) rotate\((\S+)\)" x="(\S+)" y="(\S+)" font-size="(\S+)" textLength="(\S+)">([^<]*)</text>)re");
  std::vector<WordBox> boxes;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), element); it != std::sregex_iterator(); ++it)
  {
    const auto number = [&](std::size_t group) { return std::stod((*it)[group].str()); };
    const Eigen::Vector2d anchor(number(1), number(2));
    const double turn = number(3) * std::numbers::pi / 180.0;
    const double left = number(4);
    const double baseline = number(5);
    WordBox box{.words = (*it)[8].str(), .low = anchor.array() + 1e9, .high = anchor.array() - 1e9};
    for (const double x : {left, left + number(7)})
      for (const double y : {baseline, baseline - cap_height * number(6)})
      {
        const Eigen::Vector2d corner =
            anchor + Eigen::Vector2d(std::cos(turn) * x - std::sin(turn) * y, std::sin(turn) * x + std::cos(turn) * y);
        box.low = box.low.cwiseMin(corner);
        box.high = box.high.cwiseMax(corner);
      }
    boxes.push_back(box);
  }
  return boxes;
}

inline bool contains(const std::vector<WordBox>& boxes, const std::string& words)
{
  return std::any_of(boxes.begin(), boxes.end(), [&](const WordBox& box) { return box.words == words; });
}

/// Words whose boxes overlap, "" for none.
inline std::string overlapping(const std::vector<WordBox>& boxes)
{
  for (std::size_t i = 0; i < boxes.size(); ++i)
    for (std::size_t j = i + 1; j < boxes.size(); ++j)
      if ((boxes[i].low.array() < boxes[j].high.array()).all() && (boxes[j].low.array() < boxes[i].high.array()).all())
        return boxes[i].words + " / " + boxes[j].words;
  return {};
}

/// Words that reach out of the page, "" for none.
inline std::string off_page(const std::vector<WordBox>& boxes, const std::string& svg)
{
  static const std::regex page(R"re(viewBox="0 0 (\S+) (\S+)")re");
  std::smatch match;
  if (!std::regex_search(svg, match, page))
    return "no page";
  const Eigen::Vector2d size(std::stod(match[1].str()), std::stod(match[2].str()));
  for (const WordBox& box : boxes)
    if ((box.low.array() < 2.0).any() || (box.high.array() > size.array() - 2.0).any())
      return box.words;
  return {};
}

/// Words of a picture, checked to stand inside the page and apart from each other.
inline std::vector<WordBox> checked_words(const std::filesystem::path& path)
{
  const std::string svg = bytes_of(path);
  std::vector<WordBox> words = words_in(svg);
  CHECK(words.size() > 2);
  CHECK(overlapping(words) == "");
  CHECK(off_page(words, svg) == "");
  return words;
}

} // namespace plate::test
