// SPDX-License-Identifier: MPL-2.0
#include "written_file.h"

#include <plate/core/error.h>

#include <fstream>
#include <system_error>

#include <unistd.h>

namespace plate
{
namespace
{

namespace fs = std::filesystem;

[[noreturn]] void fail(const fs::path& file, const std::string& what)
{
  throw IoError(message(file.string(), ": ", what));
}

} // namespace

void check_not_there(const fs::path& file)
{
  std::error_code error;
  if (fs::exists(fs::symlink_status(file, error)))
    fail(file, "is there already; give another name, or --force to write over it");
}

void write_file(const fs::path& file, std::string_view text, bool replace)
{
  std::error_code error;
  if (fs::is_directory(file, error))
    fail(file, "is a folder; give the name of a file, or --out for a folder");
  if (!replace)
    check_not_there(file);
  fs::path temporary = file;
  temporary += message(".plate-", ::getpid());
  std::ofstream out(temporary, std::ios::binary);
  out << text;
  out.close();
  if (out)
    fs::rename(temporary, file, error);
  if (out && !error)
    return;
  const std::string reason = error ? error.message() : "does its folder exist, and is the disk not full?";
  fs::remove(temporary, error);
  fail(file, message("cannot be written: ", reason));
}

} // namespace plate
