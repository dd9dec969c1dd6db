// SPDX-License-Identifier: MPL-2.0
#include "command_line.h"
#include "run_guarded.h"

#include <plate/core/error.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <iostream>
#include <system_error>
#include <variant>

#include <unistd.h>

// The program `plate`: answers what needs no computing, such as --help and a mistyped option, and leaves all else to
// the program plate_run.

namespace
{

/// Beside this program where it was built, in the folder for such programs where it is installed.
std::filesystem::path find_plate_run()
{
  const std::filesystem::path folder = std::filesystem::read_symlink("/proc/self/exe").parent_path();
  std::error_code absent;
  const std::filesystem::path beside = folder / "plate_run";
  return std::filesystem::exists(beside, absent) ? beside : folder / LIBPLATE_RUN_FOLDER / "plate_run";
}

int start(int argc, char** argv)
{
  const plate::Request request = plate::parse_command_line(argc, argv);
  if (const auto* text = std::get_if<plate::TextRequest>(&request))
  {
    std::cout << text->text << std::flush;
    if (!std::cout)
      throw plate::IoError("plate: standard output cannot be written");
    return plate::exit_done;
  }
  const std::filesystem::path program = find_plate_run();
  ::execv(program.c_str(), argv); // returns on failure only
  throw plate::IoError(plate::message("plate: the program that does the work, ", program.string(),
                                      ", cannot be started: ", std::strerror(errno), "; install plate again"));
}

} // namespace

int main(int argc, char** argv)
{
  return plate::run_guarded([&] { return start(argc, argv); });
}
