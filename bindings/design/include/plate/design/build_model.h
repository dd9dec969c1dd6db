// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>
#include <plate/design/design.h>
#include <plate/meshes/planform_mesh.h>

namespace plate
{

/// The model of a design on a planform mesh made for its geometry: arch, thickness, layup, bar and supports.
[[nodiscard]] Model build_model(const Design& design, const PlanformMesh& planform);

/// The model of a design on a mesh of its own.
///
/// @throws NumericalFailure if the plate cannot be meshed
[[nodiscard]] Model build_model(const Design& design);

/// Brings a model to a design of the same shape: thickness, layup, patches, bar, masses and air; its mesh stays.
void update_model(const Design& design, Model& model);

} // namespace plate
