// SPDX-License-Identifier: MPL-2.0
#include "plain_text.h"

#include <cstdint>

namespace plate
{
namespace
{

/// One character at the front of a text.
struct Character
{
  std::size_t num_bytes; ///< 1 for a byte that begins no character
  bool valid;
  bool control;
};

/// Decodes by the table of well-formed byte sequences of the Unicode Standard (Table 3-7).
Character first_character(std::string_view text)
{
  const auto byte = [&](std::size_t i) -> std::uint32_t { return static_cast<unsigned char>(text[i]); };
  const std::uint32_t lead = byte(0);
  if (lead < 0x80U)
    return {1, true, lead < 0x20U || lead == 0x7FU};
  const std::size_t length = lead >= 0xF0U ? 4 : lead >= 0xE0U ? 3 : 2;
  if (lead < 0xC2U || lead > 0xF4U || text.size() < length)
    return {1, false, false};
  std::uint32_t code = lead & (0x7FU >> length);
  for (std::size_t i = 1; i < length; ++i)
  {
    if ((byte(i) & 0xC0U) != 0x80U)
      return {1, false, false};
    code = (code << 6U) | (byte(i) & 0x3FU);
  }
  const bool too_long = (length == 3 && code < 0x800U) || (length == 4 && code < 0x10000U);
  const bool surrogate = code >= 0xD800U && code <= 0xDFFFU;
  if (too_long || surrogate || code > 0x10FFFFU)
    return {1, false, false};
  return {length, true, code >= 0x80U && code < 0xA0U};
}

} // namespace

bool is_plain_text(std::string_view text)
{
  while (!text.empty())
  {
    const Character c = first_character(text);
    if (!c.valid || c.control)
      return false;
    text.remove_prefix(c.num_bytes);
  }
  return true;
}

std::string shortened(std::string_view text, std::size_t most)
{
  std::string out;
  while (!text.empty())
  {
    const Character c = first_character(text);
    if (out.size() + c.num_bytes > most)
      return out + "...";
    if (!c.valid)
      out += '?';
    else if (c.control)
      out += ' ';
    else
      out += text.substr(0, c.num_bytes);
    text.remove_prefix(c.num_bytes);
  }
  return out;
}

std::string in_quotes(std::string_view text)
{
  std::string out = "\"";
  for (const char c : text)
  {
    if (c == '"' || c == '\\')
      out += '\\';
    out += c;
  }
  return out + '"';
}

} // namespace plate
