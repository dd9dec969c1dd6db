// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// A folder that the user asked for.
struct NamedFolder
{
  std::string path;
  std::string option = "--out"; ///< that named it, for messages
};

/// Checks that a folder exists or can be made, without making it: found out before an hour's work, not after.
///
/// @throws IoError
void check_output_folder(const NamedFolder& folder);

/// Files that appear in a folder all together or not at all.
class OutputFolder
{
public:
  /// Makes the folder if need be, and a hidden one inside it for the files being written.
  /// @throws IoError
  explicit OutputFolder(NamedFolder folder);
  /// Takes away what was not published, and the folder if it was made for it.
  ~OutputFolder();
  OutputFolder(const OutputFolder&) = delete;
  OutputFolder& operator=(const OutputFolder&) = delete;

  /// Where to write the file of that name until it is published.
  [[nodiscard]] std::filesystem::path file(std::string_view name) const { return staging_ / name; }

  /// Writes a text file. @throws IoError
  void write(std::string_view name, std::string_view text) const;

  /// Moves all files to their place. @throws IoError
  void publish();

private:
  NamedFolder named_;
  std::filesystem::path folder_; ///< in full
  std::filesystem::path staging_;
  std::vector<std::filesystem::path> made_; ///< folders made, outermost first
};

} // namespace plate
