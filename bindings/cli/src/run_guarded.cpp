// SPDX-License-Identifier: MPL-2.0
#include "run_guarded.h"

#include <plate/core/error.h>

#include <exception>
#include <iostream>

namespace plate
{
namespace
{

int report(const std::exception& error, int status)
{
  std::cerr << error.what() << '\n';
  return status;
}

} // namespace

int run_guarded(const std::function<int()>& work)
{
  try
  {
    return work();
  }
  catch (const InvalidInput& error)
  {
    return report(error, exit_wrong_input);
  }
  catch (const IoError& error)
  {
    return report(error, exit_wrong_input);
  }
  catch (const std::exception& error)
  {
    return report(error, exit_numerics_failed);
  }
}

} // namespace plate
