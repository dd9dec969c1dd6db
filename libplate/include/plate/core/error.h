// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <sstream>
#include <stdexcept>
#include <string>

namespace plate
{

/// The caller's input is wrong (the message says what, the numbers, what to do).
struct InvalidInput : std::invalid_argument
{
  using std::invalid_argument::invalid_argument;
};

/// The input is valid but the numerics failed on it.
struct NumericalFailure : std::runtime_error
{
  using std::runtime_error::runtime_error;
};

/// A file cannot be read or written.
struct IoError : std::runtime_error
{
  using std::runtime_error::runtime_error;
};

/// Builds an error text from its parts.
template <class... Parts>
[[nodiscard]] std::string message(const Parts&... parts)
{
  std::ostringstream out;
  (out << ... << parts);
  return out.str();
}

} // namespace plate
