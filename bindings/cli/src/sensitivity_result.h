// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "command_line.h"
#include "sensitivity_keys.h"

#include <plate/design/body_document.h>
#include <plate/design/design_document.h>
#include <plate/solvers/studies/sensitivity.h>

#include <Eigen/Core>

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// A key and what it does.
struct KeyEffect
{
  DerivedKey key;
  Sensitivity slopes; ///< per unit of the key
  double cents = 0.0; ///< greatest shift of a mode by the key's workshop change
};

/// A plate, or one of the plates of a body, with the maps of where thickness counts.
struct MappedPlate
{
  std::string name; ///< "top" or "back" of a body; empty for a plate
  std::string title;
  Model model;
  std::size_t num_patches; ///< of the design; blocks of a body follow
  Eigen::MatrixXd slopes;  ///< see thickness_slopes()
};

/// What the command sensitivity computes.
struct SensitivityOutcome
{
  std::string title;
  bool of_body = false;
  bool in_air = false;
  double mass = 0.0; ///< [kg]
  int unknowns = 0;
  Eigen::VectorXd frequencies_hz = {};    ///< (n) [Hz]
  std::vector<std::string> names = {};    ///< of the modes, empty where they have none, (n)
  std::vector<CloseModes> close = {};     ///< of the modes
  std::vector<KeyEffect> effects = {};    ///< the greatest first; without --key only keys that do something
  std::vector<std::string> left_out = {}; ///< see DerivedKeys
  std::size_t num_keys_done = 0;
  bool complete = false;                  ///< false if stopped early
  std::vector<MappedPlate> plates = {};   ///< empty if no maps are wanted
  std::vector<Eigen::Index> maps = {};    ///< modes whose maps are drawn, from 0
  std::optional<Eigen::Index> leave = {}; ///< mode that is to stay, from 0
  double seconds = 0.0;                   ///< in all [s]
};

/// Called before each key with its place among all; returns false to stop early.
using BeginKey = std::function<bool(std::size_t, std::size_t)>;

/// @throws UsageError         if there is no such mode as --map or --leave names
/// @throws NumericalFailure   if no mesh or no modes are found
[[nodiscard]] SensitivityOutcome compute_sensitivity(const DesignDocument& document, const SensitivityRequest& request,
                                                     const BeginKey& begin_key);

/// The same of a body with its air.
[[nodiscard]] SensitivityOutcome compute_sensitivity(const BodyDocument& document, const SensitivityRequest& request,
                                                     const BeginKey& begin_key);

/// A mode as heads of tables name it: "M5", or "mode 3" where it has no name.
[[nodiscard]] std::string mode_head(const SensitivityOutcome& outcome, Eigen::Index mode);

/// A slope to six digits of the greatest of its row. The rest are rounding errors of the solver, which depend on the
/// number of threads.
[[nodiscard]] double steady_slope(const KeyEffect& effect, Eigen::Index mode);

} // namespace plate
