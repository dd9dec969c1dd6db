// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>

#include <vector>

namespace plate
{

/// Where two models of the same triangles, with as many bars and patches, differ as far as stiffness and mass go.
class ModelDifference
{
public:
  /// Both models must outlive this.
  ModelDifference(const Model& from, const Model& to);

  /// Whether anything differs, point masses included.
  [[nodiscard]] bool any() const;

  /// Whether stiffness or mass of a triangle may differ. The covers are those of both models.
  [[nodiscard]] bool in_triangle(std::size_t triangle, const TriangleCover& from, const TriangleCover& to) const;

private:
  [[nodiscard]] bool at_nodes_of(std::size_t triangle) const;

  const Model& from_;
  bool everywhere_;         ///< the laminate itself differs
  std::vector<bool> nodes_; ///< position, normal or thickness differs
  std::vector<bool> bars_;  ///< the bar or its stations
  std::vector<bool> patches_;
  bool point_masses_;
};

} // namespace plate
