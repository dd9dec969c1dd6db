// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/error.h>

#include <cstdlib>
#include <string_view>

namespace plate::fuzz
{

/// Runs what reads an input. Refusals must be InvalidInput with a text of one line that is not too long to read;
/// whatever else is thrown ends the process, which is a finding.
template <class Read>
void refused_in_one_line(const Read& read)
{
  try
  {
    read();
  }
  catch (const InvalidInput& error)
  {
    const std::string_view text = error.what();
    constexpr std::size_t longest = 2000;
    if (text.empty() || text.size() > longest || text.find_first_of("\n\r\x1b") != std::string_view::npos)
      std::abort();
  }
}

} // namespace plate::fuzz
