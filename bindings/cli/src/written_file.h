// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <filesystem>
#include <string_view>

namespace plate
{

/// @throws IoError if there is something of that name
void check_not_there(const std::filesystem::path& file);

/// Writes a file that appears whole or not at all: a temporary one beside it is renamed.
///
/// @throws IoError if it cannot be written, or is there and must not be replaced
void write_file(const std::filesystem::path& file, std::string_view text, bool replace);

} // namespace plate
