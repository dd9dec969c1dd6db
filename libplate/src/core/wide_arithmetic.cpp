// SPDX-License-Identifier: MPL-2.0
#include <plate/core/wide_arithmetic.h>

#include <cstdlib>

namespace plate
{

namespace
{

bool processor_has_it()
{
#if defined(__x86_64__)
  return __builtin_cpu_supports("avx2") != 0 && __builtin_cpu_supports("fma") != 0;
#else
  return false;
#endif
}

} // namespace

bool has_wide_arithmetic()
{
  static const bool yes = processor_has_it() && std::getenv("LIBPLATE_NARROW") == nullptr;
  return yes;
}

} // namespace plate
