// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "temporary_folder.h"

#include <plate/assembly/parametric_body.h>
#include <plate/design/body_document.h>
#include <plate/solvers/body_modes.h>
#include <plate/solvers/studies/body_sensitivity.h>

#include <fstream>
#include <string>
#include <utility>

namespace plate::test
{

/// Modes whose derivatives are looked at.
inline constexpr int num_modes = 6;

/// Fewer motions than usual: what they lack is refined.
inline constexpr BodyOptions body_options = {
    .structure_modes = 80, .cavity_modes = 10, .refined_modes = num_refined(num_modes)};

inline constexpr const char* blocks_and_neck =
    "[blocks]\nend = [60, 15]\ncorner = [0, 0]\n[neck]\nmass = 150\ncentre = [280, 10]\nlength = 240\n";

/// An arched box with all that a body can have, coarse: derivatives are those of the mesh, whatever its size.
///
/// @param holes  of the top, as in its file
/// @param ends  tables [blocks] and [neck]
[[nodiscard]] inline BodyDocument arched_box(const std::string& holes, const std::string& ends = blocks_and_neck)
{
  const std::string plate =
      "[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n[arching]\nkind = \"biparabolic\"\nheight = 8\n"
      "[thickness]\nvalue = 3\n[layup]\nsolid = \"spruce\"\n[material.spruce]\nE1 = 11\nE2 = 0.9\nE3 = 0.5\nG12 = 0.7\n"
      "G13 = 0.67\nG23 = 0.035\nnu12 = 0.37\nnu13 = 0.47\nnu23 = 0.43\ndensity = 420\n";
  const std::string top = plate +
                          "[setup]\nstop = 190\nbridge_feet = 33\n[bar]\nmaterial = \"spruce\"\nlength = 250\n"
                          "width = 6\nheight = 10\noffset = 18\n" +
                          holes;
  const std::string body =
      "[body]\ntop = \"top.toml\"\nback = \"back.toml\"\n[ribs]\nheight = 42\nneck_height = 38\nthickness = 1.2\n"
      "overhang = 3\nmaterial = \"maple\"\n[linings]\nheight = 7\nthickness = 2\n"
      "[soundpost]\nat = [-16, -20]\ndiameter = 6.5\n[bridge]\nmass = 3\n"
      "[air]\ntemperature = 20\n[mesh]\nsize = 45\n[material.maple]\nE1 = 10\n"
      "E2 = 1.5\nE3 = 0.9\nG12 = 1.2\nG13 = 1.0\nG23 = 0.3\nnu12 = 0.37\nnu13 = 0.47\nnu23 = 0.43\ndensity = 620\n" +
      ends;
  const TemporaryFolder folder;
  std::ofstream(folder / "top.toml") << top;
  std::ofstream(folder / "back.toml") << plate;
  return BodyDocument::from_text(body, "body.toml", {.folder = folder.path()});
}

/// One slot on either side.
inline const std::string slots = "[[soundhole]]\nkind = \"slot\"\ncentre = [-10, 62]\nlength = 70\nwidth = 8\n";

/// A body and its modes, from a full solve.
struct FullSolve
{
  BodyPoint point;
  BodySystem system;
  BodyModes modes;

  [[nodiscard]] SolvedBody solved() const { return {.point = point, .system = system, .modes = modes}; }
  [[nodiscard]] Eigen::VectorXd frequencies_hz() const { return modes.coupled.frequencies_hz.head(num_modes); }
};

[[nodiscard]] inline FullSolve solve(BodyPoint point)
{
  BodySystem system = assemble(point.body);
  BodyModes modes = solve_body_modes(point.body, system, point.air,
                                     Eigen::MatrixXd(0, system.system.dofs.num_equations), body_options);
  return {.point = std::move(point), .system = std::move(system), .modes = std::move(modes)};
}

} // namespace plate::test
