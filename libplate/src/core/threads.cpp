// SPDX-License-Identifier: MPL-2.0
#include <plate/core/threads.h>

#include <plate/core/error.h>

#include <atomic>

namespace plate
{

namespace
{

std::atomic<int> chosen = 1;

} // namespace

void set_num_threads(int count)
{
  if (count < 1)
    throw InvalidInput(message("set_num_threads: needs at least one thread; got ", count));
  chosen = count;
}

int num_threads()
{
  return chosen;
}

} // namespace plate
