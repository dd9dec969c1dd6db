// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/body.h>
#include <plate/design/body_design.h>
#include <plate/design/build_body.h>
#include <plate/post/body_mode_names.h>
#include <plate/solvers/body_modes.h>
#include <plate/solvers/forced_response.h>

#include <Eigen/Core>

#include <optional>
#include <vector>

namespace plate
{

inline constexpr double litres = 1e3; ///< per m3, of the air in a body

/// Seconds spent on the parts of a run.
struct BodyTimes
{
  double mesh = 0.0;     ///< [s]
  double assemble = 0.0; ///< [s]
  double solve = 0.0;    ///< [s]
  double total = 0.0;    ///< [s]
};

/// Ways to drive the bridge: a force of 1 N on both feet together, and one half of it up and one half down.
enum BridgeDrive : Eigen::Index
{
  vertical = 0, ///< velocity: the mean of both feet
  rocking = 1,  ///< velocity: half the difference of both feet
};

/// Modes of one body with all that is reported about them.
struct BodyResult
{
  BodyDesign design;
  BodyModel model;
  BodySystem system;
  Air air;
  BodyModes modes;
  std::vector<BodyModeTraits> traits; ///< of the modes shown, (count)
  std::vector<BodyModeName> names;    ///< of modes shown
  ResponseModes bridge;               ///< drives as BridgeDrive
  BodyTimes times;
};

/// A body and what one compares it with.
struct BodyOutcome
{
  BodyResult body;
  std::optional<BodyResult> reference = {};
};
/// @throws NumericalFailure if no mesh or no modes are found
[[nodiscard]] BodyResult compute_body(BodyDesign design, int count);

/// The modes of a body that has its mesh. @param refined_modes  see BodyOptions
[[nodiscard]] BodyResult compute_body(BodyDesign design, BodyModel model, int count, int refined_modes);

/// Share of a part, or of the air as the last, in the energy of a mode, half of it strain and half of it motion [-].
[[nodiscard]] double energy_share(const CoupledModes& modes, std::size_t part, std::size_t mode);

/// Name of a mode with how sure it is, if it has one.
[[nodiscard]] std::optional<BodyModeName> name_of(const BodyResult& result, std::size_t mode);

/// Displacement along the outward normal of a part in the modes shown, (num_nodes, count) [m/sqrt(kg)].
[[nodiscard]] Eigen::MatrixXd outward_shapes(const BodyResult& result, std::size_t part);

} // namespace plate
