// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/parametric_body.h>
#include <plate/design/body_document.h>
#include <plate/design/build_body.h>

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace plate
{

/// A body's files as a parametric body: parameters are the values of some of their keys, in their units.
///
/// The first body gets a new mesh, the others its mesh moved. Both plates have one outline: a key of top.outline counts
/// for the back's too.
class BodyDesignModel final : public ParametricBody
{
public:
  /// @param keys  as BodyDocument takes them
  /// @throws DesignError if a key is not numeric
  BodyDesignModel(BodyDocument document, std::vector<std::string> keys);

  /// @throws InvalidInput      if a value is out of range or there is no such body
  /// @throws NumericalFailure  if the mesh cannot be made or moved
  [[nodiscard]] BodyPoint build(std::span<const double> parameters) override;

  /// The first body that was built; empty before.
  [[nodiscard]] const std::optional<BodyModel>& first() const { return first_; }

private:
  [[nodiscard]] BodyDesign design_at(std::span<const double> parameters) const;
  [[nodiscard]] bool keeps_planforms(std::span<const double> parameters) const;

  BodyDocument document_;
  std::vector<std::string> keys_;
  std::optional<BodyModel> first_;
  std::vector<double> first_point_;
};

} // namespace plate
