// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>
#include <plate/assembly/parametric_model.h>
#include <plate/laminates/stack_supplies.h>
#include <plate/post/mode_compare.h>

#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace plate
{

/// A mode that the laminate should have.
struct TargetMode
{
  std::string name;                ///< for reports
  int guide;                       ///< mode of MatchGoal::guide whose shape it has, from 0
  double frequency_hz;             ///< [Hz]
  std::optional<double> loss = {}; ///< needed where MatchGoal::loss is given [-]
};

/// A target mode less like its guide than this is told to the reader of a result, whatever is wanted.
inline constexpr double much_alike = 0.8;

/// What is wanted.
struct MatchGoal
{
  ModeShapes guide;                      ///< modes by whose shapes those of laminates are told, on any mesh
  Eigen::VectorXd guide_hz;              ///< their frequencies, ascending, (modes of guide) [Hz]
  std::vector<TargetMode> targets;       ///< at least one
  std::optional<double> least_mass = {}; ///< of the plate with bars and what is stuck on [kg]
  std::optional<double> most_mass = {};  ///< [kg]
  double likeness = 0.0; ///< wanted of each mode with its guide; what is missing counts in MatchCandidate::score [-]
  /// Part of a target's loss by which that of the laminate's mode may differ; what is beyond counts in the score [-].
  std::optional<double> loss = {};
};

/// Shape of the plate as far as it may change with the laminate.
struct MatchShape
{
  ParametricModel* plate = nullptr; ///< of the parameters; its laminate is replaced, its mesh moved
  std::vector<double> start = {};   ///< parameters of the start model; none: the shape stays
  std::vector<double> low = {};
  std::vector<double> high = {};
};

struct MatchCandidate;

/// How much is searched.
struct MatchOptions
{
  std::uint64_t seed = 1;
  std::size_t num_considered = 150000; ///< stacks whose modes are estimated; all there are where these are fewer
  std::size_t num_reduced = 20000;     ///< solved on the reduced model, at most
  bool thorough = false;     ///< whether stacks are solved too whose estimate says that they cannot reach the front
  std::size_t num_shown = 8; ///< at most, solved in full
  /// Called now and then with what is being done; return false to stop with what there is.
  std::function<bool(const std::string& stage)> progress = nullptr;
  /// Asked of each laminate before it is shown; one that is refused gives its place to the next best of its level of
  /// mass, a few times.
  std::function<bool(const MatchCandidate&)> accepts = nullptr;
};

/// A target and the mode of a laminate that is most like it.
struct MatchedMode
{
  std::size_t target;
  int mode;            ///< of the laminate, from 0
  double frequency_hz; ///< solved in full [Hz]
  double reduced_hz;   ///< on the reduced model, with shape and patches of the start [Hz]
  double cents;        ///< above the target
  double assurance;    ///< with the guide, of modes of nearly one frequency together [-]
  double loss = std::numeric_limits<double>::quiet_NaN(); ///< not a number where it was not asked for [-]
};

/// What small faults of laying do to a laminate: greatest change of a target mode.
struct MatchSensitivity
{
  double turned_cents = 0.0;  ///< one ply turned by 2 degrees, in a symmetric stack with its mirror image
  std::size_t turned_ply = 0; ///< the one that does it, from 0
  double thicker_cents = 0.0; ///< all plies, cores apart, 3 % thicker
};

/// A laminate that was found, solved in full.
struct MatchCandidate
{
  Laminate laminate;
  double mass;        ///< of the plate [kg]
  double mismatch;    ///< root of the mean square over the targets [cents]
  double score = 0.0; ///< the same with what likeness and loss are off what is wanted; what is made small [cents]
  std::vector<MatchedMode> modes; ///< of the targets that have a mode of like shape
  std::vector<double> shape = {}; ///< parameters of its shape; none: that of the start
  /// Plies of the patches, in their order, no plies where one is left out; empty: those of the start.
  std::vector<Laminate> patches = {};
  std::vector<std::size_t> lost = {}; ///< targets without; each counts as lost_cents
  MatchSensitivity sensitivity = {};
};

inline constexpr double lost_cents = 1200.0; ///< what a target without a mode of like shape adds to the mismatch
/// What a likeness that is 1 below the one wanted adds to the cents of a mode, in squares: 0.1 weighs as 20 cents.
inline constexpr double unlike_cents = 200.0;
/// The same of a loss that is further off than allowed by the whole of the target's.
inline constexpr double off_loss_cents = 200.0;

/// Least and greatest value among the stacks considered within the limits of mass.
struct Reach
{
  double least;
  double greatest;
};

/// How far the stacks considered reach; ratios of bending stiffness of the flat laminate, which set those of the modes.
struct MatchReach
{
  Reach mass;        ///< [kg], of all stacks, whatever the limits
  Reach cross_ratio; ///< D11 / D22 [-]
  Reach twist_ratio; ///< (D12 + 2 D66) / sqrt(D11 D22) [-]
};

struct MatchResult
{
  std::vector<MatchCandidate> candidates;   ///< none is beaten in both mass and score; ascending in score
  std::vector<MatchCandidate> refused = {}; ///< by MatchOptions::accepts, in the order they were asked for
  /// False: no stack keeps to the limits of mass, the nearest are given; or all laminates asked for were refused.
  bool fits = true;
  std::size_t num_considered = 0;
  std::size_t num_reduced = 0;
  std::size_t num_full = 0;
  bool complete = true;        ///< false if stopped early
  std::string stopped_at = {}; ///< what was being done then
  MatchReach reach = {};
};

/// D11 / D22 and (D12 + 2 D66) / sqrt(D11 D22) of a flat laminate.
struct BendingRatios
{
  double cross;
  double twist;
};
[[nodiscard]] BendingRatios bending_ratios(const Laminate& laminate);

/// Searches laminates that give a plate the modes of another.
///
/// All stacks of the supplies are considered, or as many as asked for, drawn at random and bettered step by step: their
/// modes are estimated from stiffness and mass of the section. The most promising, at each mass, are solved on a
/// reduced model of the plate in which the section enters exactly, and which learns the modes of the best; those shown
/// are solved in full. The same input gives the same bits, whatever num_threads(), unless it is stopped.
/// @param start  the plate; its laminate is replaced, directions of its plies are dropped
/// @param shape  of the plate, where it is free: the search takes its effect on the modes of one good laminate for that
/// on all; of each laminate shown it is measured anew and corrected by full solves, plies turning along where any angle
/// may be
///
/// Where patches may change, they are those of the start in the search; of each of the best laminates they are then
/// changed ply by ply as long as the score gets less, with estimates from its modes and full solves of the best of
/// these.
/// @throws InvalidInput      if there are no sheets, angles or targets, or limits of the shape do not hold its start
/// @throws NumericalFailure  as the solvers
/// @source pinned by tests/unit/solvers/match_test.cpp
[[nodiscard]] MatchResult match_layups(const Model& start, const StackSupplies& supplies, const MatchGoal& goal,
                                       const MatchOptions& options = {}, const MatchShape& shape = {});

/// Solves a candidate anew on a mesh of its own: strips along free edges are as wide as the plate is thick.
///
/// @param plate      of the candidate
/// @param candidate  gets mass, mismatch and modes with their losses; what the reduced model said stays
/// @throws NumericalFailure as the solvers
void solve_candidate(const Model& plate, const MatchGoal& goal, MatchCandidate& candidate);

/// Sorts by score and leaves out each candidate that another one beats in both mass and score.
void keep_front(std::vector<MatchCandidate>& candidates);

} // namespace plate
