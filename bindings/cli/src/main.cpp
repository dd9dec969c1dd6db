// SPDX-License-Identifier: MPL-2.0
#include "commands.h"
#include "interrupt.h"
#include "threads.h"

#include <plate/core/error.h>

#include <exception>
#include <iostream>

namespace
{

int run(int argc, const char* const* argv)
{
  const plate::CommandLine line = plate::parse_command_line(argc, argv);
  if (line.text)
    std::cout << *line.text << std::flush;
  if (line.modes)
    plate::set_num_threads(line.modes->common.threads);
  if (line.sweep)
    plate::set_num_threads(line.sweep->common.threads);
  const int status = line.modes   ? plate::run_modes(*line.modes)
                     : line.sweep ? plate::run_sweep(*line.sweep)
                                  : plate::exit_done;
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
