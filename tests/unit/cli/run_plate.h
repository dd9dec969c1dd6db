// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <filesystem>
#include <set>
#include <string>
#include <vector>

namespace plate::test
{

/// A fresh folder that disappears with the object.
class Workshop
{
public:
  Workshop();
  ~Workshop();
  Workshop(const Workshop&) = delete;
  Workshop& operator=(const Workshop&) = delete;

  [[nodiscard]] std::string path(const std::string& name) const { return (folder_ / name).string(); }
  /// Writes a file and returns its path.
  std::string write(const std::string& name, const std::string& text) const;
  /// Names of all files and folders inside, hidden ones too.
  [[nodiscard]] std::set<std::string> content(const std::string& folder = {}) const;

private:
  std::filesystem::path folder_;
};

/// A run of the executable.
struct Run
{
  int status = -1;      ///< exit status
  std::string out;      ///< standard output
  std::string err;      ///< standard error
  double seconds = 0.0; ///< of processor time: a busy machine does not count
};

/// Runs plate with the arguments and waits for it.
///
/// @param interrupt_after  seconds until it gets SIGINT; negative for never
[[nodiscard]] Run run_plate(const std::vector<std::string>& arguments, double interrupt_after = -1.0);

[[nodiscard]] std::string bytes_of(const std::string& path);

/// A plate that is solved in a blink: rectangle of spruce, coarse mesh.
[[nodiscard]] std::string quick_design();

} // namespace plate::test
