// SPDX-License-Identifier: MPL-2.0
#include "file_output.h"

#include <plate/core/error.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <system_error>

namespace plate
{

void write_whole_file(const std::filesystem::path& path, std::string_view bytes)
{
  std::filesystem::path unfinished = path;
  unfinished += ".unfinished";
  const auto fail = [&](std::string_view reason)
  {
    std::error_code ignored;
    std::filesystem::remove(unfinished, ignored);
    throw IoError(message("cannot write ", path.string(), ": ", reason,
                          "; does the folder exist, may you write there, is there space left?"));
  };

  errno = 0;
  std::ofstream out(unfinished, std::ios::binary | std::ios::trunc);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  out.close();
  if (!out)
    fail(errno != 0 ? std::strerror(errno) : "the file system refused");

  std::error_code error;
  std::filesystem::rename(unfinished, path, error);
  if (error)
    fail(error.message());
}

} // namespace plate
