// SPDX-License-Identifier: MPL-2.0
#include "measured_unit.h"

#include "text_table.h"

#include <plate/core/error.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace plate
{

void check_measured_unit(const std::string& list, const std::string& design, std::vector<double> ratios)
{
  struct Unit
  {
    const char* name;
    double per_hertz;
  };
  constexpr std::array<Unit, 2> units = {{{"rad/s", 2.0 * std::numbers::pi}, {"kHz", 1e-3}}};
  constexpr double nearness = 1.25; // factor; a plate and its model differ by less
  const auto middle = ratios.begin() + static_cast<std::ptrdiff_t>(ratios.size() / 2);
  std::nth_element(ratios.begin(), middle, ratios.end());
  for (const auto& [name, per_hertz] : units)
    if (std::abs(std::log(*middle / per_hertz)) < std::log(nearness))
      throw InvalidInput(message(list, ": frequencies are about ", compact(*middle, 3), " times those of ", design,
                                 ", as if they were in ", name, "; frequency_hz must be in Hz"));
}

} // namespace plate
