// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>
#include <plate/elements/bar.h>
#include <plate/laminates/laminate.h>
#include <plate/materials/moisture.h>
#include <plate/meshes/direction_fit.h>
#include <plate/meshes/fit_report.h>
#include <plate/meshes/planform_mesh.h>
#include <plate/meshes/plate_geometry.h>

#include <optional>
#include <string>
#include <vector>

namespace plate
{

/// Where the player's measures put bridge and strings.
struct Setup
{
  double bridge_x;      ///< x of the bridge line [m]
  double string_length; ///< sounding length [m]
  double bridge_feet;   ///< distance of the centres of the bridge's feet [m]
};

/// The air around the plate.
struct Surroundings
{
  Climate climate = {};
  double air_density = 0.0;   ///< of the air that moves with the plate; 0 in vacuo [kg/m3]
  bool climate_given = false; ///< humidity is stated, so materials with moisture data are taken there
};

/// What a plate is made of, whatever its shape.
struct LayupDesign
{
  std::string title;
  Laminate laminate; ///< from inside to outside; that of a graduated solid plate has the thickness in its middle
};

/// What the residuals of a fit are.
enum class FitQuantity
{
  distance, ///< [m]
  angle     ///< [rad]
};

/// How well a part fits the points of a file it was made from.
struct PartFit
{
  std::string part; ///< "outline", "arching", "thickness", "soundhole 1", ...
  std::string file; ///< as named in the design
  FitReport report;
  std::vector<int> outlier_lines; ///< line of the file for each outlier, from 1
  FitQuantity quantity = FitQuantity::distance;
};

/// Directions that a ply takes instead of its angle.
struct PlyDirectionField
{
  std::size_t ply; ///< index into the laminate
  DirectionField field;
};

/// One plate as its design file describes it: plain data in SI, checked.
struct Design
{
  std::string title;
  PlateGeometry geometry; ///< a laminate's thickness is that of its stack
  Laminate laminate;      ///< from inside to outside, layup.scale and layup.scale_core applied
  std::optional<Bar> bar; ///< its place is geometry.bar
  std::vector<SupportedEdge> supports;
  std::vector<PlyDirectionField> directions = {};
  std::vector<Patch> patches = {}; ///< the first lie next to the laminate
  std::vector<PointMass> masses = {};
  Surroundings surroundings = {};
  double cure_change = 0.0; ///< of the temperature since the laminate was cured [K]
  Setup setup;
  MeshOptions mesh;
  std::vector<PartFit> fits; ///< of the parts given by points
};

} // namespace plate
