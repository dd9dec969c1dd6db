// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "eigenproblem.h"

#include <memory>

namespace plate::benchmarks
{

/// What the cells of a solid are filled with.
enum class SolidShape
{
  hexahedra,
  tetrahedra ///< six in each cell: what automatic mesh generators make of a solid
};

/// Mesh for the arched spruce plate of benchmarks/arched_spruce.toml.
struct SolidMesh
{
  SolidShape shape = SolidShape::hexahedra;
  int order;   ///< of displacements and of the geometry
  int cells_x; ///< between the strips along the edges
  int cells_y;
  int layers = 1; ///< of cells through the thickness
  int strips = 1; ///< rows of narrow cells along the edges, 3 mm wide together
};

/// The plate as a body of three-dimensional elasticity in GetFEM: what one would take without a shell element.
///
/// A strip of 3 mm runs along the edges as in our meshes, since without it no mesh converges (DEVELOPERS.md,
/// "Decisions").
class SolidPlate
{
public:
  explicit SolidPlate(const SolidMesh& mesh);
  ~SolidPlate();
  SolidPlate(const SolidPlate&) = delete;
  SolidPlate& operator=(const SolidPlate&) = delete;

  /// Stiffness and mass, assembled by GetFEM.
  [[nodiscard]] Eigenproblem assemble(double shift) const;

private:
  struct Implementation;
  std::unique_ptr<Implementation> implementation_;
};

} // namespace plate::benchmarks
