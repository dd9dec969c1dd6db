// SPDX-License-Identifier: MPL-2.0
#include "interrupt.h"

#include <csignal>
#include <string_view>

#include <unistd.h>

namespace plate
{
namespace
{

volatile std::sig_atomic_t num_interrupts = 0;
volatile std::sig_atomic_t num_deferring = 0;

extern "C" void note_interrupt(int)
{
  num_interrupts = num_interrupts + 1;
  if (num_deferring > 0 && num_interrupts == 1)
    return;
  constexpr std::string_view text = "plate: interrupted\n";
  // Nothing can be done about a closed terminal here.
  static_cast<void>(!::write(STDERR_FILENO, text.data(), text.size()));
  ::_exit(exit_interrupted);
}

} // namespace

void install_interrupt_handler()
{
  struct sigaction action = {};
  action.sa_handler = note_interrupt;
  sigemptyset(&action.sa_mask);
  static_cast<void>(sigaction(SIGINT, &action, nullptr)); // fails for unknown signals only
}

DeferredInterrupt::DeferredInterrupt()
{
  num_deferring = num_deferring + 1;
}
DeferredInterrupt::~DeferredInterrupt()
{
  num_deferring = num_deferring - 1;
}

bool interrupted()
{
  return num_interrupts > 0;
}

} // namespace plate
