// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/assembly/model.h>
#include <plate/design/design.h>

#include <string>

namespace plate::benchmarks
{

/// A design of the repository, meshed, assembled and with the matrix that is factorised for its modes.
struct Plate
{
  Design design;
  Model model;
  System system;
  double shift;         ///< negative [1/s2]
  SparseMatrix shifted; ///< K - shift M, lower triangle
};

/// The sizes at which most is measured.
enum class Size
{
  demo, ///< the demo viola at default accuracy, 53 000 unknowns
  fine  ///< the same with 130 000 unknowns
};

/// "viola 53k" or "viola 130k", as the benchmarks are called after it.
[[nodiscard]] std::string name_of(Size size);

/// The design file of the demo viola of that size.
[[nodiscard]] Design viola_design(Size size);

/// The demo viola of spruce, made when first asked for.
[[nodiscard]] const Plate& viola(Size size);

/// A path inside the repository.
[[nodiscard]] std::string in_repository(const std::string& path);

/// The shift at which the plate's modes are sought.
[[nodiscard]] double shift_of(const System& system);

} // namespace plate::benchmarks
