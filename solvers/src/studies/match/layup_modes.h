// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "../../reduced_model/reduced_system.h"
#include "../../reduced_model/small_modes.h"
#include "../../reduced_model/snapshot_vectors.h"
#include "bar_strip.h"
#include "layup_losses.h"
#include "packed_terms.h"
#include "section_numbers.h"

#include <plate/solvers/modal.h>

#include <memory>
#include <span>
#include <vector>

namespace plate::match
{

/// Modes of one laminate on the plate, solved in full.
struct FullModes
{
  ModalResult modal; ///< in the air of the model, if it has one
  double mass;       ///< [kg]
};

/// Modes from the reduced model.
struct QuickModes
{
  Eigen::VectorXd frequencies_hz; ///< ascending, (n) [Hz]
  Eigen::MatrixXd shares;         ///< of the vectors of the basis, (num_vectors, n)
  Eigen::VectorXd losses;         ///< if asked for, (n) [-]
};

/// Whether losses of modes are wanted too: they take a tenth of the time of full solves and a third of reduced ones.
enum class Losses
{
  left_out,
  computed
};

/// A plate with another laminate, the same everywhere.
[[nodiscard]] Model with_laminate(Model model, const Laminate& laminate);

/// Modes of a plate as a function of its one laminate.
///
/// Stiffness and mass are linear in the numbers of the section, so that they are combined of those of a few laminates,
/// whatever the stack: plies in any number, material, angle and thickness have no parameters of their own. The shapes
/// are combined of the modes of laminates it has learned.
class LayupModes
{
public:
  /// @param start      the plate
  /// @param laminates  that stand for all it will be asked about
  LayupModes(Model start, std::vector<Laminate> laminates, int num_modes, Losses losses);

  /// Solves laminates in full and takes their shapes into the basis.
  void learn(std::span<const Laminate> laminates);

  /// @param plate  of the same triangles as model(), perhaps in another shape
  [[nodiscard]] FullModes full(const Model& plate);

  /// Several may run at a time.
  [[nodiscard]] QuickModes quick(const Laminate& laminate) const;

  [[nodiscard]] Model model(const Laminate& laminate) const; ///< of the plate with that laminate
  [[nodiscard]] const DofMap& dofs() const { return plain_.dofs; }
  [[nodiscard]] const reduced::Vectors& basis() const { return basis_; }
  [[nodiscard]] std::size_t num_full() const { return num_full_; }

private:
  [[nodiscard]] Eigen::VectorXd losses(const Laminate& laminate, const Eigen::VectorXd& stiffness_factors,
                                       const reduced::SmallModes& modes) const;
  void extend(const Eigen::MatrixXd& shapes);
  void extend_air();

  Model start_;
  std::vector<TriangleCover> covers_; // without torsion
  System plain_;                      // of the first laminate, without point masses
  double shift_;                      // [1/s2]
  int num_modes_;
  SectionReader reader_;
  std::unique_ptr<SectionCombination> combine_stiffness_;
  std::unique_ptr<SectionCombination> combine_mass_;
  std::unique_ptr<BarStrip> strip_;        // none without bars
  std::unique_ptr<LayupLosses> losses_;    // none if not asked for
  std::vector<Laminate> stiffness_of_;     // laminates of the terms
  std::vector<Laminate> mass_of_;          // the same
  std::vector<Eigen::MatrixXd> stiffness_; // terms of laminates, then of the torsion of bars
  std::vector<Eigen::MatrixXd> mass_;      // terms of laminates, then of stuck-on masses and the air
  PackedTerms packed_stiffness_;
  PackedTerms packed_mass_;
  reduced::EnergyMatrix energy_;
  reduced::Vectors basis_;
  Assembler assembler_;
  ModalSolver solver_;
  std::size_t num_full_ = 0;
};

} // namespace plate::match
