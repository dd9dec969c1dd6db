// SPDX-License-Identifier: MPL-2.0
#include "progress.h"

#include <iostream>

#include <unistd.h>

namespace plate
{
namespace
{

constexpr const char* clear_line = "\r\x1b[K";

} // namespace

Progress::Progress() : terminal_(::isatty(STDERR_FILENO) == 1) {}

Progress::~Progress()
{
  if (terminal_)
    std::cerr << clear_line << std::flush;
}

void Progress::show(const std::string& text)
{
  if (terminal_)
    std::cerr << clear_line << text << " ..." << std::flush;
}

} // namespace plate
