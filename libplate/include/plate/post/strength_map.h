// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/nodal_unknowns.h>
#include <plate/laminates/failure.h>

#include <Eigen/Core>

#include <span>
#include <string>
#include <vector>

namespace plate
{

/// The place where a load uses most of the strength.
struct StrengthPlace
{
  std::size_t node = 0;                                   ///< of the mesh
  int ply = 0;                                            ///< counted from 1 on the inside, patches too; 0: the bar
  const Material* material = nullptr;                     ///< in the model, which must outlive it
  double z = 0.0;                                         ///< from the reference surface [m]
  FailureMode mode = FailureMode::combined;               ///< what gives way
  MaterialComponents stress = MaterialComponents::Zero(); ///< in the axes of the material, held part included [Pa]
};

/// How much of the strength of a plate a load uses.
struct StrengthMap
{
  /// Share of the strength used at each node, (num_nodes): 1 over the margin of the worst ply at its bottom, middle or
  /// top, the mean over the triangles that meet there, of those with and those without a bar the greater [-].
  Eigen::VectorXd used = {};
  double margin = 0.0; ///< 1 over the greatest share; infinity without stress [-]
  StrengthPlace worst = {};
};

/// What beside the displacements decides about strength.
struct StrengthOptions
{
  double cure_change = 0.0; ///< of the temperature since the cure, for the stress held fixed in laminates [K]
};

/// Maps of several states of one model.
///
/// Stress is taken at the nodes of all triangles. Sharp corners of holes and edges of supports are singular: there the
/// margin falls as the mesh is refined.
/// @throws InvalidInput if no material has strengths, or as PlyStresses::cure_stress()
[[nodiscard]] std::vector<StrengthMap> strength_maps(const Model& model, std::span<const NodalUnknowns> states,
                                                     const StrengthOptions& options = {});

/// Names of the materials of a model that have no strengths, each once: they are not judged.
[[nodiscard]] std::vector<std::string> materials_without_strength(const Model& model);

/// All materials of a model, laminate first, then patches and bars, each name once.
[[nodiscard]] std::vector<const Material*> materials_of(const Model& model);

} // namespace plate
