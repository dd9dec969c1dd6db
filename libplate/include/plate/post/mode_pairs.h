// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/post/mode_compare.h>

#include <Eigen/Core>

#include <vector>

namespace plate
{

/// A mode of a reference and the one of another plate that is most like it. Indices from 0.
struct ShapePair
{
  int reference;
  int other;
  double assurance; ///< modal assurance criterion [-]
  /// The same with the modes of nearly the same frequency taken together, any mixture of them allowed: never less [-].
  double group_assurance;
};

/// Modes of nearly the same frequency, which mix at the slightest change, and what they are paired with.
struct ModeGroup
{
  std::vector<int> reference; ///< ascending
  std::vector<int> other;     ///< ascending
  Eigen::VectorXd angles;     ///< principal angles between both subspaces, ascending, (smaller of both sizes) [rad]
};

/// Which modes of two plates belong together.
struct ModePairing
{
  Eigen::MatrixXd assurance;     ///< modal assurance criterion, (modes of the reference, modes of the other)
  std::vector<ShapePair> pairs;  ///< in the order of the reference
  std::vector<int> unpaired;     ///< modes of the reference like none of the other
  std::vector<ModeGroup> groups; ///< only those of more than one mode in either plate
};

/// What counts as near and as alike.
struct PairingOptions
{
  /// Modes follow one another in a group where their frequencies differ by less [-]. Coupling of a few cents, from a
  /// bar or an uneven mesh, mixes modes as near as this.
  double closeness = 0.01;
  double least_assurance = 0.3; ///< of a group; below it, two modes are no pair [-]
};

/// Pairs modes by shape, one to one, so that the sum of all likenesses is largest.
///
/// Within groups of nearly the same frequency a mode counts as like another as far as it lies in the space the other's
/// group spans; the modal assurance criterion then decides which of the group it is.
/// @param products            of the shapes
/// @param reference_hz        frequencies of the reference's modes, ascending, (n) [Hz]
/// @param other_hz            of the other plate's, ascending, (m >= n) [Hz]
/// @throws InvalidInput if sizes do not fit
/// @source principal angles: [Bjorck1973]; assignment as best_assignment()
[[nodiscard]] ModePairing pair_by_shape(const ShapeProducts& products, const Eigen::VectorXd& reference_hz,
                                        const Eigen::VectorXd& other_hz, const PairingOptions& options = {});

} // namespace plate
