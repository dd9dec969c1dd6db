// SPDX-License-Identifier: MPL-2.0
#include "commands.h"
#include "interrupt.h"
#include "run_guarded.h"

#include <plate/core/error.h>
#include <plate/core/threads.h>

#include <iostream>
#include <variant>

#ifdef __GLIBC__
#include <malloc.h>
#endif

int plate::run_command(const TextRequest& request)
{
  std::cout << request.text << std::flush;
  return exit_done;
}

namespace
{

int run(int argc, const char* const* argv)
{
  const int status = std::visit(
      [](const auto& request)
      {
        if constexpr (requires { request.common; })
          plate::set_num_threads(request.common.threads);
        return plate::run_command(request);
      },
      plate::parse_command_line(argc, argv));
  if (!std::cout)
    throw plate::IoError("plate: standard output cannot be written");
  return status;
}

/// Memory once taken is kept for what comes next: the matrices of a run come and go, and the kernel clears each page
/// anew (4 % of a run).
void keep_memory()
{
#ifdef __GLIBC__
  constexpr int most = 1 << 30; // [bytes]
  mallopt(M_MMAP_THRESHOLD, most);
  mallopt(M_TRIM_THRESHOLD, most);
#endif
}

} // namespace

int main(int argc, char** argv)
{
  keep_memory();
  plate::install_interrupt_handler();
  return plate::run_guarded([&] { return run(argc, argv); });
}
