// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/parametric_model.h>
#include <plate/design/design.h>
#include <plate/design/design_document.h>
#include <plate/meshes/planform_mesh.h>

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// A design file as a function of some of its keys, for the studies.
///
/// The mesh is made at the first point and moved to the others, so that results change as smoothly as the design does.
class DesignModel : public ParametricModel
{
public:
  /// @param keys  numeric keys of the file, the parameters in this order, each in the unit of its key
  /// @throws DesignError if a key is not numeric
  DesignModel(DesignDocument document, std::vector<std::string> keys);

  /// @throws DesignError      if there is no such design
  /// @throws NumericalFailure if the plate cannot be meshed
  [[nodiscard]] Model build(std::span<const double> parameters) override;

  /// Keeps the mesh of the model, strips along the edges too, if keeps_mesh(). Else takes that of the first point as it
  /// is where only keys differ from it that move no node, and moves it where others do.
  ///
  /// @throws DesignError if there is no such design
  void rebuild(std::span<const double> parameters, Model& model) override;

  /// Whether no key moves a node: only materials, layup, thickness, masses, plies of patches or the height of the bar.
  [[nodiscard]] bool keeps_mesh() const;

  /// Points so far where moving the mesh would have turned a triangle inside out, so that a new one was made.
  [[nodiscard]] int num_remeshed() const { return num_remeshed_; }

private:
  [[nodiscard]] Design design_at(std::span<const double> parameters) const;
  [[nodiscard]] bool keeps_first_mesh(std::span<const double> parameters) const;

  DesignDocument document_;
  std::vector<std::string> keys_;
  std::vector<double> first_point_;
  std::optional<PlanformMesh> first_; ///< of the first point
  Model first_model_;                 ///< at the first point
  int num_remeshed_ = 0;
};

} // namespace plate
