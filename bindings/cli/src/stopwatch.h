// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <chrono>

namespace plate
{

/// Time since it was made.
class Stopwatch
{
public:
  [[nodiscard]] double seconds() const ///< [s]
  {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count();
  }

private:
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
};

} // namespace plate
