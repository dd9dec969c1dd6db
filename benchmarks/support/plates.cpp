// SPDX-License-Identifier: MPL-2.0
#include "plates.h"

#include <plate/design/build_model.h>
#include <plate/design/design_document.h>

#include <cmath>
#include <map>
#include <numbers>
#include <utility>

#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace plate::benchmarks
{
namespace
{

constexpr double fine_mesh_size = 5.75; // gives 130 000 unknowns [mm]

/// Memory once taken is kept, as `plate` keeps it, whatever is measured: else pages are cleared again and again.
[[maybe_unused]] const bool memory_kept = []
{
#ifdef __GLIBC__
  constexpr int most = 1 << 30; // [bytes]
  return mallopt(M_MMAP_THRESHOLD, most) == 1 && mallopt(M_TRIM_THRESHOLD, most) == 1;
#else
  return false;
#endif
}();

Plate make_plate(Design design)
{
  Model model = build_model(design);
  System system = assemble(model);
  const double shift = shift_of(system);
  SparseMatrix shifted = system.K - shift * system.M;
  return {.design = std::move(design),
          .model = std::move(model),
          .system = std::move(system),
          .shift = shift,
          .shifted = std::move(shifted)};
}

} // namespace

std::string in_repository(const std::string& path)
{
  return std::string(LIBPLATE_SOURCE_DIR) + "/" + path;
}

std::string name_of(Size size)
{
  return size == Size::demo ? "viola 53k" : "viola 130k";
}

Design viola_design(Size size)
{
  DesignDocument document = DesignDocument::from_file(in_repository("examples/viola/spruce_top.toml"));
  if (size == Size::fine)
    document.set_number("mesh.size", fine_mesh_size);
  return document.design();
}

const Plate& viola(Size size)
{
  static std::map<Size, Plate> made;
  const auto found = made.find(size);
  return found != made.end() ? found->second : made.emplace(size, make_plate(viola_design(size))).first->second;
}

double shift_of(const System& system)
{
  return -std::pow(2.0 * std::numbers::pi * system.typical_frequency_hz, 2);
}

} // namespace plate::benchmarks
