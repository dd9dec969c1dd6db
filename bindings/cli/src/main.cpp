// SPDX-License-Identifier: MPL-2.0
#include "commands.h"
#include "interrupt.h"
#include "threads.h"

#include <plate/core/error.h>

#include <exception>
#include <iostream>
#include <variant>

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

int report(const std::exception& error, int status)
{
  std::cerr << error.what() << '\n';
  return status;
}

} // namespace

int main(int argc, char** argv)
{
  plate::install_interrupt_handler();
  try
  {
    return run(argc, argv);
  }
  catch (const plate::InvalidInput& error)
  {
    return report(error, plate::exit_wrong_input);
  }
  catch (const plate::IoError& error)
  {
    return report(error, plate::exit_wrong_input);
  }
  catch (const std::exception& error)
  {
    return report(error, plate::exit_numerics_failed);
  }
}
