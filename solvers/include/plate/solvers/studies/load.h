// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/post/strength_map.h>
#include <plate/solvers/buckling.h>
#include <plate/solvers/statics.h>

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// Strings pressing on a plate through the two feet of a bridge, half each.
struct StringLoad
{
  double downforce = 0.0;              ///< of both feet, inward [N]
  std::array<Eigen::Vector2d, 2> feet; ///< their centres [m]
  Eigen::Vector2d foot;                ///< lengths of an elliptic foot along x and y [m]
};

/// How a plate is handled. Forces are pressed through round fingertips.
struct Handling
{
  double thumb = 0.0;            ///< press of a thumb, inward [N]
  Eigen::Vector2d thumb_at = {}; ///< [m]
  double knock = 0.0;            ///< knock on a soundhole's edge, on a corner [N]
  double lift = 1.0;             ///< acceleration with which a bare plate is lifted or shaken, over gravity [-]
  double fingertip = 0.015;      ///< diameter [m]
  double knuckle = 0.008;        ///< diameter of what knocks [m]
};

/// What a plate has to carry.
struct LoadSetup
{
  StringLoad strings = {};
  std::vector<SupportBed> posts = {}; ///< under the plate on its rim; what they stand on does not give
  Handling handling = {};
  EdgeSupport rim = EdgeSupport::hinged; ///< of a model without supports of its own, when it is on its rim
  double cure_change = 0.0;              ///< see StrengthOptions [K]
  int num_modes = 3;                     ///< compared with and without the strings; 0 for none
};

/// One load and what the plate makes of it.
struct LoadCase
{
  std::string name;  ///< "strings", "thumb", "wing", "grip", "corner", "two fingers"
  bool bare = false; ///< a free plate held in equilibrium by fingers or by inertia, not on its rim
  Eigen::Vector2d at = Eigen::Vector2d::Zero(); ///< where it is pressed, knocked or held [m]
  double force = 0.0;                           ///< [N]
  NodalUnknowns displacements = {};             ///< of a bare plate without rigid motion
  std::size_t most_moved = 0;                   ///< node of the largest displacement along the normal
  double deflection = 0.0;                      ///< there, positive outward [m]
  StaticResult evidence = {};
  double balance_error = 0.0; ///< of forces and reactions, or of what should balance a bare plate, over the load [-]
  StrengthMap strength = {};
};

/// Strength, deflection and stability of a plate.
struct LoadStudy
{
  double mass = 0.0;                          ///< of the plate [kg]
  std::vector<LoadCase> cases = {};           ///< the strings first
  std::vector<double> foot_deflections = {};  ///< under the strings, mean over each foot, positive outward [m]
  std::vector<double> post_forces = {};       ///< under the strings, of each post on the plate, outward [N]
  BucklingResult buckling = {};               ///< factors on the string load
  Eigen::VectorXd frequencies_hz = {};        ///< of the plate on its rim without strings [Hz]
  Eigen::VectorXd loaded_frequencies_hz = {}; ///< with them; empty beyond the buckling load [Hz]
};

/// Loads a plate by its strings and by hand.
///
/// On its rim: strings, thumb and a knock on the softest place of the soundholes' edges. Bare: gripped at the edge with
/// two fingers, knocked on its sharpest corner (its inertia resists), carried on two fingers. Cases for which a plate
/// has no place (no hole, no corner) are left out.
/// @throws InvalidInput if a force has no place on the plate, or no material has strengths
/// @throws NumericalFailure as the solvers
/// @source pinned by tests/unit/solvers/load_test.cpp
[[nodiscard]] LoadStudy study_load(const Model& model, const LoadSetup& setup);

} // namespace plate
