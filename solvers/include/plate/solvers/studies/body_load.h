// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/body_loads.h>
#include <plate/core/units.h>
#include <plate/post/strength_map.h>
#include <plate/solvers/body_modes.h>
#include <plate/solvers/buckling.h>
#include <plate/solvers/statics.h>

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// Where strings run: in a plane along x, over a bridge that leans so that it halves their bend and is not bent itself.
struct StringPath
{
  Eigen::Vector3d crest;    ///< where they pass over the bridge [m]
  Eigen::Vector3d to_neck;  ///< unit, from there
  Eigen::Vector3d to_lower; ///< unit, from there towards the lower end
};

/// The path over a bridge.
///
/// @param foot    middle between the feet, on the plate [m]
/// @param height  of the strings over the feet, along z [m]
/// @param saddle  where they reach the lower end; its y does not count [m]
/// @param bend    angle by which they bend over the bridge
/// @throws InvalidInput if the strings rise from the bridge to the neck: too little bend for that height
[[nodiscard]] StringPath string_path(const Eigen::Vector3d& foot, double height, const Eigen::Vector3d& saddle,
                                     Angle bend);

/// Nodes that are glued to what pulls at them.
struct GluedNodes
{
  std::size_t part = 0;   ///< index into Body::parts
  std::vector<int> nodes; ///< of that part
};

/// Strings over a body: they pull at neck and lower end and press on the feet of the bridge, half on each.
struct BodyStrings
{
  double tension = 0.0;                ///< of all together [N]
  Angle bend = {};                     ///< over the bridge
  std::array<Eigen::Vector2d, 2> feet; ///< centres, in the planform of the top [m]
  Eigen::Vector2d foot;                ///< lengths of an elliptic foot along x and y [m]
  double height = 0.0;                 ///< of the strings over the feet [m]
  Eigen::Vector3d saddle;              ///< where they reach the lower end [m]
  GluedNodes neck;                     ///< of the block at the neck
  GluedNodes lower;                    ///< of the block at the lower end
};

/// Hands on a body.
struct BodyHandling
{
  double thumb = 0.0;                                 ///< pressed between a thumb on the top and a finger below [N]
  Eigen::Vector2d thumb_at = Eigen::Vector2d::Zero(); ///< in the planform of the top [m]
  double squeeze = 0.0;                               ///< pressed between two fingers on the ribs at the waist [N]
  double knock = 0.0;                                 ///< on the edge of a soundhole; inertia resists [N]
  double fingertip = 0.015;                           ///< diameter [m]
  double knuckle = 0.008;                             ///< diameter of what knocks [m]
  double hand = 0.04;                                 ///< diameter of what squeezes, fingers side by side [m]
};

/// What a body has to carry. Axes: those of the body, x towards the neck, z out of the top.
struct BodyLoadSetup
{
  std::size_t top = 0;  ///< index into Body::parts
  std::size_t back = 1; ///< index into Body::parts; its planform is the mirror image of the top's
  BodyStrings strings = {};
  BodyHandling handling = {};
  std::vector<double> cure_changes = {}; ///< of each part, see StrengthOptions; empty: none [K]
  int num_modes = 3;                     ///< compared with and without the strings; 0 for none
  std::optional<BodyAir> air = {};       ///< in these modes; in vacuo without
};

/// One part under a load.
struct PartLoad
{
  NodalUnknowns displacements = {};         ///< the ribs at rest in the mean
  std::optional<StrengthMap> strength = {}; ///< none for a part without materials that have strengths
};

/// One load and what the body makes of it.
struct BodyLoadCase
{
  std::string name;                             ///< "strings", "thumb", "squeeze", "wing"
  Eigen::Vector3d at = Eigen::Vector3d::Zero(); ///< where it acts, of a pair the first place [m]
  double force = 0.0;                           ///< of strings on the bridge, of a hand [N]
  std::vector<PartLoad> parts = {};             ///< as Body::parts
  PartNode most_moved = {};                     ///< place of the largest displacement along the normal
  double deflection = 0.0;                      ///< there, positive outward [m]
  std::vector<double> post_forces = {};         ///< of each strut on the part of its first foot, along z [N]
  std::optional<std::size_t> worst = {};        ///< part with the least margin
  StaticResult evidence = {};
  double inertia = 0.0;       ///< imbalance() of what hands do alone, which the inertia of the body takes [-]
  double balance_error = 0.0; ///< force and moment that are left over those of all forces [-]

  /// The least of all parts; infinity without stress [-].
  [[nodiscard]] double margin() const;
};

/// Strength, deflection and stability of a body.
struct BodyLoadStudy
{
  double mass = 0.0; ///< [kg]
  StringPath path = {};
  double downforce = 0.0;                      ///< of the bridge on the top, against z [N]
  std::vector<BodyLoadCase> cases = {};        ///< the strings first
  std::array<double, 2> foot_deflections = {}; ///< under the strings, mean over each foot along z, the ribs at rest [m]
  std::vector<std::array<double, 2>> post_deflections = {}; ///< of its feet on top and back, along z [m]
  BucklingResult buckling = {};                             ///< factors on the string load
  Eigen::VectorXd frequencies_hz = {};                      ///< without strings [Hz]
  Eigen::VectorXd loaded_frequencies_hz = {};               ///< with them; empty beyond the buckling load [Hz]
};

/// Loads a closed body by its strings and by hand, held by nothing: the loads balance, and a knock the body's inertia.
///
/// Strings turn with the mean motion of the body, and keep their directions while it gives way. Displacements are those
/// against the parts other than top and back, whose mean rigid motion is taken away. A body without soundholes is not
/// knocked.
/// @throws InvalidInput if a force has no place on the body, or no material has strengths
/// @throws NumericalFailure as the solvers
/// @source pinned by tests/unit/solvers/body_load_test.cpp
[[nodiscard]] BodyLoadStudy study_load(const Body& body, const BodyLoadSetup& setup);

} // namespace plate
