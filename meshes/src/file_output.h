// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <filesystem>
#include <string_view>

namespace plate
{

/// Writes a file so that it appears complete or not at all: a temporary file beside it, then renamed.
/// @throws IoError naming the path; nothing is left behind
void write_whole_file(const std::filesystem::path& path, std::string_view bytes);

} // namespace plate
