// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/file_access.h>

#include <cstdint>
#include <filesystem>
#include <string>

namespace plate
{

/// Where a file named in a design lies, `..` and symbolic links resolved.
///
/// @throws InvalidInput if the name is no file that may be read: no folder, outside of it, missing, not a plain file
[[nodiscard]] std::filesystem::path resolve(const std::string& name, const FileAccess& access);

/// The access with the folder of a file, where it names none.
[[nodiscard]] FileAccess with_folder(FileAccess access, const std::filesystem::path& file);

/// Content of a plain file.
///
/// @throws InvalidInput if it has more bytes than `most`
/// @throws IoError if it cannot be read
[[nodiscard]] std::string bytes_of(const std::filesystem::path& path, std::uintmax_t most);

/// Text of a file that a user names, at most a page or two of it: pipes and devices are read up to the limit.
///
/// @throws IoError if it is a folder or cannot be read
/// @throws DesignError if it has more than a MiB
[[nodiscard]] std::string text_of(const std::filesystem::path& path);

} // namespace plate
