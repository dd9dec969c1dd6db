// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "mode_targets.h"

#include <plate/assembly/model.h>

#include <Eigen/Core>

#include <vector>

namespace plate::match
{

/// Plies of each patch of a plate, from inside to outside; none: the patch is left out.
using PatchPlies = std::vector<Laminate>;

/// A plate with other plies in its patches.
[[nodiscard]] Model with_patches(Model model, const PatchPlies& patches);

/// Fillings of patches that are one ply or one patch away.
///
/// @param start    of the plate: each may be taken back to it
/// @param choices  plies that a patch may have
/// @param most     plies of a patch; those of the start may have more
[[nodiscard]] std::vector<PatchPlies> neighbours(const PatchPlies& patches, const std::vector<Patch>& start,
                                                 const std::vector<Ply>& choices, std::size_t most);

/// Numbers of a few choices spread over all of them: sheets and angles follow one another there.
[[nodiscard]] std::vector<std::size_t> unlike_plies(std::size_t num_choices);

/// Changes of patches that are solved in full at each step: estimates of strong patches are tens of cents high.
inline constexpr std::size_t num_patches_solved = 6;

/// What other plies in the patches do to a plate, estimated from modes with a few of them, which are combined anew
/// without a solve. What is chosen is solved in full.
class PatchTrials
{
public:
  /// All of it must outlive this object.
  /// @param plate   with its patches as they are
  /// @param solved  the plate
  /// @param others  modes of the plate with other plies in its patches, columns
  PatchTrials(const Model& plate, const FullModes& solved, const Eigen::MatrixXd& others, const ModeTargets& targets);

  struct Estimate
  {
    double score; ///< MatchCandidate::score [cents]
    double mass;  ///< of the plate, exact [kg]
  };
  [[nodiscard]] Estimate estimate(const PatchPlies& patches) const;

private:
  /// Stiffness and mass of the triangles with patches on the modes, and their mass.
  struct PatchedPart
  {
    Eigen::MatrixXd stiffness;
    Eigen::MatrixXd inertia;
    double mass; ///< [kg]
  };
  [[nodiscard]] PatchedPart part(const PatchPlies& patches) const;

  const Model& plate_;
  const FullModes& solved_;
  const ModeTargets& targets_;
  std::vector<TriangleCover> covers_;  // without torsion
  std::vector<std::size_t> triangles_; // with patches
  System system_;                      // of the plate
  Eigen::MatrixXd vectors_;            // rigid motions and all modes
  PatchedPart rest_;                   // of the plate without those triangles
  ShapeProducts products_;             // of the guide with the modes
  Eigen::VectorXd losses_;             // of the modes, if wanted
};

} // namespace plate::match
