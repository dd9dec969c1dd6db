// SPDX-License-Identifier: MPL-2.0
#include "threads.h"

#include <dlfcn.h>

namespace plate
{
namespace
{

// Which BLAS serves the factorisation is the system's choice at run time, so its switch is looked up there too.
void call_if_present(const char* function, int count)
{
  using Setter = void (*)(int);
  if (const auto setter = reinterpret_cast<Setter>(::dlsym(RTLD_DEFAULT, function)))
    setter(count);
}

} // namespace

void set_num_threads(int count)
{
  call_if_present("openblas_set_num_threads", count);
  call_if_present("omp_set_num_threads", count);
}

} // namespace plate
