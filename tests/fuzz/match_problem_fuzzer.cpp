// SPDX-License-Identifier: MPL-2.0
// A match problem beside the designs of the example. Problems are read from files only.
#include "one_line.h"

#include <plate/design/match_problem.h>

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <random>

namespace
{

/// A copy of the example's folder for the problem to be written into, which disappears with the process.
class Folder
{
public:
  Folder()
      : path_(std::filesystem::temp_directory_path() / ("plate-match-fuzz-" + std::to_string(std::random_device()())))
  {
    std::filesystem::copy(EXAMPLES_DIR "/viola", path_);
  }
  ~Folder()
  {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  [[nodiscard]] std::filesystem::path write(std::string_view text) const
  {
    std::filesystem::path file = path_ / "fuzz.toml";
    std::ofstream(file, std::ios::binary) << text;
    return file;
  }

private:
  std::filesystem::path path_;
};

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
  static const Folder folder;
  const std::filesystem::path file = folder.write({reinterpret_cast<const char*>(data), size});
  plate::fuzz::refused_in_one_line([&] { static_cast<void>(plate::read_match_problem(file)); });
  return 0;
}
