// SPDX-License-Identifier: MPL-2.0
#include "dotted_keys.h"

#include <algorithm>
#include <cstddef>

namespace plate
{
namespace
{

/// End of the string that begins at the front of the text: the byte after its closing quotes, or the end of the text.
std::size_t end_of_string(std::string_view text)
{
  const char quote = text.front();
  const bool long_string = text.size() >= 3 && text[1] == quote && text[2] == quote;
  const std::size_t width = long_string ? 3 : 1;
  for (std::size_t i = width; i < text.size(); ++i)
  {
    if (text[i] == '\\' && quote == '"')
    {
      ++i;
      continue;
    }
    if (!long_string && text[i] == '\n')
      return i; // not closed: the parser will say so
    const std::string_view rest = text.substr(i);
    if (std::all_of(rest.begin(), rest.begin() + static_cast<std::ptrdiff_t>(std::min(width, rest.size())),
                    [&](char c) { return c == quote; }) &&
        rest.size() >= width)
      return i + width;
  }
  return text.size();
}

} // namespace

int line_of_deep_key(std::string_view text, int most)
{
  constexpr std::string_view between_keys = "=,[]{}\n";
  int line = 1;
  int dots = 0;
  while (!text.empty())
  {
    const char c = text.front();
    std::size_t passed = 1;
    if (c == '"' || c == '\'')
      passed = end_of_string(text);
    else if (c == '#')
      passed = std::min(text.find('\n'), text.size());
    else if (c == '.' && ++dots > most)
      return line;
    else if (between_keys.find(c) != std::string_view::npos)
      dots = 0;
    line += static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(passed), '\n'));
    text.remove_prefix(passed);
  }
  return 0;
}

} // namespace plate
