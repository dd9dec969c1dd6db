// SPDX-License-Identifier: MPL-2.0
// A match problem beside the designs of the example. Problems are read from files only.
#include "one_line.h"
#include "temporary_folder.h"

#include <plate/design/match_problem.h>

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <string_view>

namespace
{

/// A copy of the example's folder for the problem to be written into, which disappears with the process.
struct Folder : plate::test::TemporaryFolder
{
  Folder() { std::filesystem::copy(EXAMPLES_DIR "/viola", path()); }
};

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
  static const Folder folder;
  const std::filesystem::path file = folder / "fuzz.toml";
  std::ofstream(file, std::ios::binary) << std::string_view(reinterpret_cast<const char*>(data), size);
  plate::fuzz::refused_in_one_line([&] { static_cast<void>(plate::read_match_problem(file)); });
  return 0;
}
