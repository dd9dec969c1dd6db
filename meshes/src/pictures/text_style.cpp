// SPDX-License-Identifier: MPL-2.0
#include "text_style.h"

#include <array>
#include <charconv>
#include <cmath>

namespace plate
{

std::string shortened(std::string_view words, const TextStyle& style, double width)
{
  if (text_width(words, style) <= width)
    return std::string(words);
  const auto is_inside_letter = [&](std::size_t at) // UTF-8: all bytes of a letter but its first begin with 10
  { return at < words.size() && (static_cast<unsigned char>(words[at]) & 0xC0U) == 0x80U; };
  std::string cut;
  for (std::size_t length = words.size(); length > 0;)
  {
    --length;
    if (is_inside_letter(length))
      continue;
    cut = std::string(words.substr(0, length)) + "\u2026";
    if (text_width(cut, style) <= width)
      break;
  }
  return cut;
}

std::string label_number(double value, int decimals)
{
  std::array<char, 64> buffer{};
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::abs(value), std::chars_format::fixed, decimals);
  const std::string digits(buffer.data(), end.ptr);
  const bool is_zero = digits.find_first_not_of("0.") == std::string::npos;
  return value < 0.0 && !is_zero ? "\u2212" + digits : digits;
}

Colour readable_on(const Colour& colour)
{
  return to_lab(colour).L > 58.0 ? black : white;
}

} // namespace plate
