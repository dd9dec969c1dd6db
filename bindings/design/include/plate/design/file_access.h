// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <filesystem>

namespace plate
{

/// Which files a design may name in keys such as outline.file.
struct FileAccess
{
  std::filesystem::path folder = {}; ///< names are relative to it; empty: the folder of the design file, for text none
  bool allow_outside = false;        ///< files outside the folder may be read as well
};

} // namespace plate
