// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <span>
#include <string_view>

namespace plate::validation
{

/// A file that was compiled in.
struct EmbeddedFile
{
  std::string_view name;
  std::string_view text;
};

/// The files of tests/reference/data, `cases.csv` first.
[[nodiscard]] std::span<const EmbeddedFile> embedded_files();

} // namespace plate::validation
