// SPDX-License-Identifier: MPL-2.0
#include "svg_output.h"

#include <array>
#include <cctype>
#include <charconv>
#include <map>
#include <numbers>
#include <string_view>

namespace plate
{

namespace
{

std::string number(double value)
{
  std::array<char, 64> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, 2);
  return {buffer.data(), end.ptr};
}

std::string escaped(std::string_view words)
{
  std::string out;
  for (const char c : words)
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (static_cast<unsigned char>(c) >= 0x20) // XML has no control characters
      out += c;
  return out;
}

std::string element(const PlacedText& text)
{
  constexpr double degrees = 180.0 / std::numbers::pi;
  const double left = -part_before_anchor(text.style.align) * text.width;
  const double baseline = 0.5 * capital_height * text.style.size;
  return "<text transform=\"translate(" + number(text.anchor[0]) + " " + number(text.anchor[1]) + ") rotate(" +
         number(text.style.turn * degrees) + ")\" x=\"" + number(left) + "\" y=\"" + number(baseline) +
         "\" font-size=\"" + number(text.style.size) + "\" textLength=\"" + number(text.width) + "\">" +
         escaped(text.words) + "</text>\n";
}

} // namespace

std::string with_own_numbers(const std::string& svg)
{
  // Names as Cairo writes them where they are defined and used.
  constexpr std::array<std::string_view, 6> marks = {"id=\"surface", "id=\"image", "id=\"source",
                                                     "\"#surface",   "\"#image",   "\"#source"};
  std::map<std::string, int> own;
  std::string result;
  std::size_t done = 0;
  for (std::size_t at = svg.find('"'); at != std::string::npos; at = svg.find('"', at + 1))
    for (const std::string_view mark : marks)
    {
      const std::size_t start = at - mark.find('"');
      if (start < done || svg.compare(start, mark.size(), mark) != 0)
        continue;
      std::size_t end = start + mark.size();
      while (end < svg.size() && std::isdigit(static_cast<unsigned char>(svg[end])) != 0)
        ++end;
      const std::string known = svg.substr(start + mark.size(), end - start - mark.size());
      const int next = static_cast<int>(own.size()) + 1;
      result.append(svg, done, start + mark.size() - done);
      result += std::to_string(own.try_emplace(known, next).first->second);
      done = end;
      break;
    }
  return result.append(svg, done);
}

std::string with_searchable_text(const std::string& svg, const std::vector<PlacedText>& texts)
{
  const std::size_t end = svg.rfind("</svg>");
  std::string layer = "<g fill-opacity=\"0\" font-family=\"sans-serif\">\n";
  for (const PlacedText& text : texts)
    if (!text.words.empty())
      layer += element(text);
  return svg.substr(0, end) + layer + "</g>\n" + svg.substr(end);
}

} // namespace plate
