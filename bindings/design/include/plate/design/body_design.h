// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/design.h>
#include <plate/design/load_design.h>

#include <Eigen/Core>

#include <optional>
#include <string>

namespace plate
{

/// The walls between top and back.
struct RibDesign
{
  double height;      ///< between the plates' inner faces at the lower end [m]
  double neck_height; ///< at the neck end; straight between both [m]
  double overhang;    ///< of the plates over the outer face [m]
  Laminate laminate;  ///< angles from the plane of the rim, positive upwards to the right seen from outside
};

/// Strips glued inside the ribs along both plates, grain along them.
struct LiningDesign
{
  double height;    ///< [m]
  double thickness; ///< [m]
  Material material;
};

/// Blocks inside the ribs, grain from plate to plate.
struct BlockDesign
{
  Eigen::Vector2d end;    ///< width across the body and depth of those at neck and lower end; width 0: none [m]
  Eigen::Vector2d corner; ///< reach along the ribs from a corner and mean depth; reach 0: none [m]
  Material material;
};

/// A post between top and back, grain along it.
struct PostDesign
{
  Eigen::Vector2d at; ///< in the axes of the top [m]
  double diameter;    ///< [m]
  Material material;
};

/// A neck as a rigid body on the block at its end.
struct NeckDesign
{
  double mass;            ///< [kg]
  Eigen::Vector2d centre; ///< x and z of its centre of gravity [m]
  double length;          ///< of the thin rod along x like which it turns [m]
};

/// A closed body as its file describes it: plain data in SI, checked.
struct BodyDesign
{
  std::string title;
  Design top;
  Design back;
  RibDesign ribs;
  std::optional<LiningDesign> linings;
  BlockDesign blocks;
  std::optional<PostDesign> soundpost;
  double bridge_mass; ///< [kg]
  std::optional<NeckDesign> neck;
  Strings strings;
  double air_temperature; ///< [deg C]
  double mesh_size;       ///< edge length in both plates; 0: chosen [m]
};

} // namespace plate
