// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "compared.h"

#include <plate/design/measured_modes.h>
#include <plate/post/mode_pairs.h>

#include <Eigen/Core>

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// A mode of a design and the reference's it belongs to. Indices from 0.
struct ComparedPair
{
  std::size_t reference;
  std::size_t mode;
  std::optional<double> assurance = {};       ///< modal assurance criterion, where shapes are known [-]
  std::optional<double> group_assurance = {}; ///< with modes of nearly the same frequency taken together [-]
};

/// Modes of a design beside those of a reference.
struct PairedModes
{
  std::vector<ComparedPair> pairs = {};   ///< in the order of the reference
  std::vector<std::size_t> unpaired = {}; ///< modes of the reference without a partner
  std::vector<ModeGroup> groups = {};
  Eigen::MatrixXd assurance = {}; ///< (modes of the reference, modes of the design); empty without shapes
  double share_left_out = 0.0;    ///< of the reference, where there is nothing to compare with [-]
};

/// One design beside the reference.
struct ComparedDesign
{
  Compared design;
  PairedModes paired;
};

/// How modes were paired.
enum class PairedBy
{
  shape,
  name_and_order,
  name_and_frequency
};

/// What the command compare computes.
struct CompareOutcome
{
  std::string title; ///< of the reference
  PairedBy paired_by = PairedBy::shape;
  std::vector<ComparedMode> reference;
  std::optional<Compared> reference_design = {}; ///< none for measured modes
  std::vector<ComparedDesign> designs;           ///< at least one, all plates or all bodies
  double seconds = 0.0;                          ///< for all of it [s]

  [[nodiscard]] bool of_bodies() const { return designs.front().design.body() != nullptr; }
};

/// Modes to solve for in a design, so that each of the reference finds its own although others have come in between.
[[nodiscard]] int num_searched(int num_reference);

/// Pairs the lowest modes of designs with those of a reference by shape.
///
/// @param designs  of the reference's kind, plates or bodies
/// @param count    modes of the reference
/// @throws InvalidInput if kinds differ or outlines are too different; as compute_compared()
[[nodiscard]] CompareOutcome compare_designs(AnyDesign reference, std::vector<AnyDesign> designs, int count);

/// Pairs measured modes with those of designs: by shape where the list has shapes, else by trade name, then in order,
/// those of a body by frequency.
///
/// @param designs  all plates or all bodies
/// @param count    modes to solve for at least
/// @throws InvalidInput if the list is in another unit or its places lie beside the plate, or if it has shapes of a
///   body; as compute_compared()
[[nodiscard]] CompareOutcome compare_measured(const MeasuredModes& measured, std::vector<AnyDesign> designs, int count);

} // namespace plate
