// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"
#include "body_shapes.h"
#include "laminate_result.h"
#include "modes_result.h"

#include <plate/post/mode_compare.h>

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace plate
{

/// A mode to compare, computed or measured.
struct ComparedMode
{
  int number; ///< among the elastic modes, from 1
  std::string name;
  double frequency_hz;        ///< [Hz]
  std::optional<double> loss; ///< [-]
};

/// A plate with all that is compared.
struct ComparedPlate
{
  ModesResult result;
  LaminateResult layup;
};

/// A body with all that is compared.
struct ComparedBody
{
  BodyResult result;
  LaminateResult top;  ///< layup
  LaminateResult back; ///< layup
};

/// What modes are compared of; its large matrices are dropped, so that several designs fit side by side.
struct Compared
{
  std::string title;
  double mass; ///< [kg]
  std::vector<ComparedMode> modes;
  std::variant<ComparedPlate, ComparedBody> design;

  [[nodiscard]] const ComparedPlate* plate() const { return std::get_if<ComparedPlate>(&design); }
  [[nodiscard]] const ComparedBody* body() const { return std::get_if<ComparedBody>(&design); }
};

/// A design of either kind.
using AnyDesign = std::variant<Design, BodyDesign>;

/// Computes the lowest modes of a design. @throws NumericalFailure if no mesh or no modes are found
[[nodiscard]] Compared compute_compared(AnyDesign design, int count);

/// Shapes of the modes of either kind.
using ComparedShapes = std::variant<ModeShapes, BodyShapes>;

[[nodiscard]] ComparedShapes shapes_of(const Compared& compared);

/// @throws InvalidInput if one is a plate and the other a body, or as shape_products()
[[nodiscard]] ShapeProducts shape_products(const ComparedShapes& reference, const ComparedShapes& other);

} // namespace plate
