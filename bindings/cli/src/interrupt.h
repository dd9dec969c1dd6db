// SPDX-License-Identifier: MPL-2.0
#pragma once

namespace plate
{

inline constexpr int exit_interrupted = 130; ///< as a shell reports SIGINT

/// From now on an interrupt (Ctrl-C) ends the program at once with exit_interrupted.
void install_interrupt_handler();

/// While one lives, a first interrupt is only noted, so that results so far can be given and files are whole; a second
/// one still ends the program.
class DeferredInterrupt
{
public:
  DeferredInterrupt();
  ~DeferredInterrupt();
  DeferredInterrupt(const DeferredInterrupt&) = delete;
  DeferredInterrupt& operator=(const DeferredInterrupt&) = delete;
};

/// Whether an interrupt was noted.
[[nodiscard]] bool interrupted();

} // namespace plate
