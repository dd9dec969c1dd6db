// SPDX-License-Identifier: MPL-2.0
#include "named_file.h"

#include <plate/design/design_error.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <system_error>

namespace plate
{
namespace
{

namespace fs = std::filesystem;

constexpr std::size_t longest_name = 1000;

bool is_inside(const fs::path& path, const fs::path& folder)
{
  const auto end = std::mismatch(folder.begin(), folder.end(), path.begin(), path.end()).first;
  return end == folder.end();
}

} // namespace

fs::path resolve(const std::string& name, const FileAccess& access)
{
  const bool control = std::any_of(name.begin(), name.end(), [](unsigned char c) { return c < 0x20 || c == 0x7f; });
  if (control || name.size() > longest_name)
    throw InvalidInput("no name of a file");
  if (access.folder.empty())
    throw InvalidInput("the design is no file and has no folder in which to look for it; give the folder");
  std::error_code error;
  const fs::path folder = fs::canonical(access.folder, error);
  if (error)
    throw InvalidInput(message("the folder ", access.folder.string(), " cannot be read"));
  const fs::path path = fs::weakly_canonical(folder / name, error);
  if (!error && !access.allow_outside && !is_inside(path, folder))
    throw InvalidInput("lies outside the folder of the design file; copy it there, or allow it (--allow-outside)");
  if (error || !fs::exists(path, error))
    throw InvalidInput(message("there is no such file; it is looked for in ", folder.string()));
  if (!fs::is_regular_file(path, error))
    throw InvalidInput("is no plain file");
  return path;
}

FileAccess with_folder(FileAccess access, const fs::path& file)
{
  if (access.folder.empty())
    access.folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
  return access;
}

std::string bytes_of(const fs::path& path, std::uintmax_t most)
{
  std::error_code error;
  if (const std::uintmax_t size = fs::file_size(path, error); !error && size > most)
    throw InvalidInput(message("has ", size, " bytes; at most ", most, " are read"));
  std::ifstream in(path, std::ios::binary);
  if (!in)
    throw IoError(message(path.string(), ": cannot be read; may you read it?"));
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

std::string text_of(const fs::path& path)
{
  constexpr std::size_t most = std::size_t{1} << 20;
  std::error_code error;
  if (fs::is_directory(path, error))
    throw IoError(message(path.string(), ": is a folder; a file is expected"));
  std::ifstream in(path, std::ios::binary);
  if (!in)
    throw IoError(message(path.string(), ": cannot be read; does it exist?"));
  // Read up to the limit, not by the size: pipes have none, and some devices never end.
  std::string text(most + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (in.bad())
    throw IoError(message(path.string(), ": cannot be read"));
  text.resize(static_cast<std::size_t>(in.gcount()));
  if (text.size() > most)
    throw DesignError(message(path.string(), ": is longer than ", most, " bytes, the most such a file may have"));
  return text;
}

} // namespace plate
