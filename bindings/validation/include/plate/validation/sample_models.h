// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>
#include <plate/validation/structured_mesh.h>

#include <vector>

namespace plate::validation
{

/// An isotropic material.
[[nodiscard]] Material isotropic(double E, double nu, double density);

/// Carbon/epoxy of many textbook examples: E1 181, E2 10.3, G12 7.17, nu12 0.28 [Kaw2006] table 2.1; G13 = G12,
/// G23 3.78 and 1600 kg/m3 are those of the independent computations.
[[nodiscard]] Material carbon_epoxy();

/// Quarter-cut spruce of the first-order reference plates (ratios near [WoodHandbook2021] for Sitka spruce).
[[nodiscard]] Material quarter_cut_spruce();

/// Spruce, carbon ply and end-grain core of the three-dimensional reference plates.
[[nodiscard]] Material reference_spruce();
[[nodiscard]] Material reference_carbon();
[[nodiscard]] Material reference_balsa();

/// Solid plate: a laminate of one ply.
[[nodiscard]] Laminate solid(const Material& material, double thickness, double degrees = 0.0,
                             Grain grain = Grain::laid);

/// Laminate of equal plies, inside first.
[[nodiscard]] Laminate stack(const Material& material, double ply_thickness, const std::vector<double>& degrees);

/// The model of a laminate, free all round.
[[nodiscard]] Model plate_model(ShellMesh mesh, const Laminate& laminate);

/// The same support on the four sides of a grid mesh.
void support_all_sides(Model& model, EdgeSupport support);

} // namespace plate::validation
