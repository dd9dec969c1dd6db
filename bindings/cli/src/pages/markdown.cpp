// SPDX-License-Identifier: MPL-2.0
#include "markdown.h"

namespace plate
{

std::string markdown_row(const std::vector<std::string>& cells)
{
  std::string row = "|";
  for (const std::string& cell : cells)
  {
    row += cell.empty() ? "" : " ";
    for (const char c : cell)
      row += c == '|' ? std::string("\\|") : std::string(1, c);
    row += " |";
  }
  return row + "\n";
}

std::string markdown_header(const std::vector<std::string>& cells)
{
  std::string rule = "|";
  for (std::size_t i = 0; i < cells.size(); ++i)
    rule += "---|";
  return markdown_row(cells) + rule + "\n";
}

std::string code(std::string_view text)
{
  return text.empty() ? std::string() : "`" + std::string(text) + "`";
}

} // namespace plate
