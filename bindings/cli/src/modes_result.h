// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/assemble.h>
#include <plate/assembly/model.h>
#include <plate/design/design.h>
#include <plate/meshes/planform_mesh.h>
#include <plate/solvers/modal.h>

#include <Eigen/Core>

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// Seconds spent on the parts of a run.
struct StageTimes
{
  double mesh = 0.0;     ///< [s]
  double assemble = 0.0; ///< [s]
  double solve = 0.0;    ///< [s]
  double errors = 0.0;   ///< estimating the error bars [s]
  double total = 0.0;    ///< [s]
};

/// One mesh on the way to the accuracy asked for.
struct RefinementStep
{
  double size; ///< of the mesh [m]
  int unknowns;
  double greatest_error; ///< error bar over frequency, of the mode where it is greatest [-]
};

/// Modes of one design with all that is reported about them.
struct ModesResult
{
  Design design;
  Model model;
  MeshQuality mesh;
  double size; ///< edge length of the mesh inside the plate [m]
  System system;
  ModalResult modal;
  Eigen::VectorXd errors_hz;      ///< error bars of the frequencies, (n) [Hz]
  Eigen::VectorXd losses;         ///< (n) [-]
  Eigen::MatrixXd normal_shapes;  ///< displacement along the normal, (num_nodes, n) [m/sqrt(kg)]
  std::vector<std::string> names; ///< "M1", "M2", "M5" or empty, (n)
  StageTimes times;
  std::vector<RefinementStep> refinement = {}; ///< meshes tried for an accuracy, the one of these modes last
  bool accurate = true;                        ///< the accuracy asked for is reached
};

/// What the command modes computes.
struct ModesOutcome
{
  ModesResult design;
  std::optional<ModesResult> beside; ///< a second design to compare it with
};

/// @throws NumericalFailure if no mesh or no modes are found
[[nodiscard]] ModesResult compute_modes(Design design, int count);

} // namespace plate
