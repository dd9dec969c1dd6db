// SPDX-License-Identifier: MPL-2.0
#include "edit_distance.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <vector>

namespace plate
{
namespace
{

char lower(char c)
{
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

} // namespace

int edit_distance(std::string_view a, std::string_view b)
{
  // Optimal string alignment: three rows of the table are enough.
  constexpr std::size_t longest = 200; // longer words are no typing slips and would cost quadratic time
  a = a.substr(0, longest);
  b = b.substr(0, longest);
  std::vector<int> before(b.size() + 1);
  std::vector<int> last(b.size() + 1);
  std::vector<int> row(b.size() + 1);
  std::iota(last.begin(), last.end(), 0);
  for (std::size_t i = 1; i <= a.size(); ++i)
  {
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j)
    {
      const int change = lower(a[i - 1]) == lower(b[j - 1]) ? 0 : 1;
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + change});
      if (i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) && lower(a[i - 2]) == lower(b[j - 1]))
        row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

int slip_distance(std::string_view a, std::string_view b)
{
  constexpr std::size_t fewest = 3; // letters that say which word is meant
  if (a.size() > b.size())
    std::swap(a, b);
  const bool begins = a.size() >= fewest && b.find('.', a.size()) == std::string_view::npos &&
                      std::equal(a.begin(), a.end(), b.begin(), [](char x, char y) { return lower(x) == lower(y); });
  return begins && a.size() < b.size() ? 1 : edit_distance(a, b);
}

} // namespace plate
