// SPDX-License-Identifier: MPL-2.0
#include "output_folder.h"

#include <plate/core/error.h>

#include <fstream>
#include <string>
#include <system_error>
#include <utility>

#include <unistd.h>

namespace plate
{
namespace
{

namespace fs = std::filesystem;

[[noreturn]] void fail(const std::string& option, const fs::path& path, const std::string& what)
{
  throw IoError(message(option, ": ", path.string(), ": ", what));
}

fs::path full_path(const fs::path& folder)
{
  fs::path path = fs::absolute(folder).lexically_normal();
  return path.has_filename() ? path : path.parent_path(); // a trailing slash names the same folder
}

} // namespace

void check_output_folder(const NamedFolder& folder)
{
  fs::path place = full_path(folder.path);
  std::error_code error;
  while (!fs::exists(place, error) && place.has_parent_path() && place != place.parent_path())
    place = place.parent_path();
  if (!fs::is_directory(place, error))
    fail(folder.option, folder.path, message(place.string(), " is no folder"));
  if (::access(place.c_str(), W_OK | X_OK) != 0)
    fail(folder.option, folder.path, message("nothing can be written in ", place.string()));
}

OutputFolder::OutputFolder(NamedFolder folder) : named_(std::move(folder)), folder_(full_path(named_.path))
{
  check_output_folder(named_);
  std::error_code error;
  for (fs::path missing = folder_; !fs::exists(missing, error); missing = missing.parent_path())
    made_.insert(made_.begin(), missing);
  staging_ = folder_ / message(".plate-", ::getpid());
  fs::create_directories(staging_, error);
  if (error)
    fail(named_.option, named_.path, message("cannot be made: ", error.message()));
}

OutputFolder::~OutputFolder()
{
  std::error_code error; // an exception may be on its way; there is nobody left to tell
  fs::remove_all(staging_, error);
  for (auto folder = made_.rbegin(); folder != made_.rend(); ++folder)
    if (fs::is_empty(*folder, error))
      fs::remove(*folder, error);
}

void OutputFolder::write(std::string_view name, std::string_view text) const
{
  std::ofstream out(file(name), std::ios::binary);
  out << text;
  out.close();
  if (!out)
    fail(named_.option, folder_ / name, "cannot be written; is the disk full?");
}

void OutputFolder::publish()
{
  std::error_code error;
  for (const fs::directory_entry& entry : fs::directory_iterator(staging_))
  {
    fs::rename(entry.path(), folder_ / entry.path().filename(), error);
    if (error)
      fail(named_.option, folder_ / entry.path().filename(), message("cannot be written: ", error.message()));
  }
}

} // namespace plate
