// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>

namespace plate
{

/// One line on standard error that says what is being done; shown on a terminal only, and gone when done.
class Progress
{
public:
  Progress();
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void show(const std::string& text);

private:
  bool terminal_;
};

} // namespace plate
