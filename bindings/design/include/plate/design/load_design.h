// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/core/units.h>

#include <Eigen/Core>

#include <optional>

namespace plate
{

/// Strings over a bridge.
struct Strings
{
  double tension;       ///< of all strings together [N]
  Angle angle;          ///< by which they bend over the bridge
  Eigen::Vector2d foot; ///< lengths of a foot of the bridge along x and y [m]
};

/// A post between the plates, under the top.
struct Soundpost
{
  Eigen::Vector2d at; ///< [m]
  double diameter;    ///< [m]
  double stiffness;   ///< along its axis [N/m]
};

/// Hands on a plate or a body.
struct HandlingForces
{
  double thumb;             ///< [N]
  Eigen::Vector2d thumb_at; ///< [m]
  double knock;             ///< [N]
  double lift;              ///< of a bare plate, acceleration over gravity [-]
  double squeeze;           ///< on the ribs of a body [N]
};

/// Factors by which strength in use falls short of that of a good specimen in a short test [-].
struct KnockDowns
{
  double hand_layup;         ///< laminates laid by hand
  double hole_edge;          ///< laminates at the cut edge of a hole
  double hot_wet;            ///< laminates in heat and moisture
  double sustained_laminate; ///< laminates under strings for years
  double sustained_wood;     ///< wood under strings for years
};

/// What a plate has to carry, as its design file describes it.
struct LoadDesign
{
  Strings strings;
  std::optional<Soundpost> soundpost;
  HandlingForces handling;
  KnockDowns knock_downs;
};

/// What a body has to carry beside its strings, as its file describes it.
struct BodyLoadDesign
{
  double bridge_height; ///< of the strings over the top at the bridge line [m]
  HandlingForces handling;
  KnockDowns knock_downs;
};

} // namespace plate
