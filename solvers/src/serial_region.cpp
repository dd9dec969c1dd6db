// SPDX-License-Identifier: MPL-2.0
#include "serial_region.h"

#include <dlfcn.h>

namespace plate
{

namespace
{

// Which OpenMP there is depends on the libraries that are loaded, so its switches are looked up.
template <class Function>
Function* loaded(const char* name)
{
  return reinterpret_cast<Function*>(::dlsym(RTLD_DEFAULT, name));
}

void set_levels(int levels)
{
  static auto* const set = loaded<void(int)>("omp_set_max_active_levels");
  if (set != nullptr)
    set(levels);
}

int get_levels()
{
  static auto* const get = loaded<int()>("omp_get_max_active_levels");
  return get != nullptr ? get() : 0;
}

} // namespace

SerialRegion::SerialRegion() : levels_(get_levels())
{
  set_levels(0);
}

SerialRegion::~SerialRegion()
{
  set_levels(levels_);
}

} // namespace plate
