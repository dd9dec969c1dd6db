// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/error.h>

namespace plate
{

/// A design file or an override of it is wrong; the text names file, line, key, value and what is allowed.
struct DesignError : InvalidInput
{
  using InvalidInput::InvalidInput;
};

} // namespace plate
