// SPDX-License-Identifier: MPL-2.0
#include "pair_modes.h"

#include <algorithm>
#include <cstddef>
#include <iterator>

namespace plate
{

std::vector<ModePair> pair_modes(const std::vector<std::string>& first, const std::vector<std::string>& second)
{
  const auto place_in = [](const std::vector<std::string>& names, const std::string& name)
  { return static_cast<std::size_t>(std::distance(names.begin(), std::find(names.begin(), names.end(), name))); };
  const auto is_shared = [&](const std::string& name)
  { return !name.empty() && place_in(first, name) < first.size() && place_in(second, name) < second.size(); };

  std::vector<std::size_t> rest;
  for (std::size_t i = 0; i < second.size(); ++i)
    if (!is_shared(second[i]))
      rest.push_back(i);
  std::vector<ModePair> pairs;
  std::size_t next = 0;
  for (std::size_t i = 0; i < first.size(); ++i)
    if (is_shared(first[i]))
      pairs.push_back({.first = i, .second = place_in(second, first[i])});
    else if (next < rest.size())
      pairs.push_back({.first = i, .second = rest[next++]});
  return pairs;
}

} // namespace plate
