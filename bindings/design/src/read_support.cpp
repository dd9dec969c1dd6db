// SPDX-License-Identifier: MPL-2.0
#include "read_support.h"

#include <array>
#include <cstddef>
#include <string>

namespace plate
{
namespace
{

constexpr std::array<const char*, 4> sides = {"x-", "x+", "y-", "y+"};

EdgeSupport support_of(const std::string& word)
{
  if (word == "rest")
    return EdgeSupport::rest;
  if (word == "hinged")
    return EdgeSupport::hinged;
  return word == "clamped" ? EdgeSupport::clamped : EdgeSupport::free;
}

void add(std::vector<SupportedEdge>& supports, const char* group, const std::string& word)
{
  if (word != "free")
    supports.push_back({.group = group, .support = support_of(word)});
}

} // namespace

std::vector<SupportedEdge> read_support(const TableReader& root, bool rectangle)
{
  const TableReader table = root.table("support");
  std::vector<SupportedEdge> supports;
  if (table.has("edges"))
  {
    if (!rectangle)
      table.fail("edges", "only a rectangle has four sides; use support.edge");
    if (table.has("edge"))
      table.fail("edges", "contradicts support.edge; give one of them");
    const std::vector<std::string> words = table.words("edges");
    for (std::size_t i = 0; i < sides.size(); ++i)
      add(supports, sides[i], words[i]);
    return supports;
  }
  const std::string word = table.word("edge", "free");
  if (!rectangle)
    add(supports, "outline", word);
  else
    for (const char* side : sides)
      add(supports, side, word);
  return supports;
}

} // namespace plate
