// SPDX-License-Identifier: MPL-2.0
#include "serial_region.h"

#include <dlfcn.h>

namespace plate
{

namespace
{

// Which OpenMP and BLAS there are depends on the libraries that are loaded, so their switches are looked up.
template <class Function>
Function* loaded(const char* name)
{
  return reinterpret_cast<Function*>(::dlsym(RTLD_DEFAULT, name));
}

/// A setting with a function to read and one to write it.
struct Setting
{
  int (*get)();
  void (*set)(int);

  /// @return what it was before; the new value itself if there is no such setting
  [[nodiscard]] int change(int value) const
  {
    if (get == nullptr || set == nullptr)
      return value;
    const int before = get();
    restore(value);
    return before;
  }

  void restore(int value) const
  {
    if (get != nullptr && set != nullptr && get() != value)
      set(value);
  }
};

const Setting& openmp_levels()
{
  static const Setting setting = {loaded<int()>("omp_get_max_active_levels"),
                                  loaded<void(int)>("omp_set_max_active_levels")};
  return setting;
}

const Setting& blas_threads()
{
  static const Setting setting = {loaded<int()>("openblas_get_num_threads"),
                                  loaded<void(int)>("openblas_set_num_threads")};
  return setting;
}

} // namespace

SerialRegion::SerialRegion() : levels_(openmp_levels().change(0)), threads_(blas_threads().change(1)) {}

SerialRegion::~SerialRegion()
{
  blas_threads().restore(threads_);
  openmp_levels().restore(levels_);
}

} // namespace plate
