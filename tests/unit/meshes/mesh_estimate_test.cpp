// SPDX-License-Identifier: MPL-2.0
#include "viola.h"

#include <plate/meshes/mesh_estimate.h>
#include <plate/meshes/mesher.h>

#include <doctest/doctest.h>

using namespace plate;

namespace
{

void check_estimate(const PlateGeometry& geometry, double size)
{
  const MeshOptions options{.size = size};
  const MeshQuality mesh = mesh_quality(mesh_planform(geometry, options));
  const MeshEstimate estimate = estimate_mesh(geometry, options);
  CAPTURE(size);
  CAPTURE(mesh.num_nodes);
  CAPTURE(estimate.num_nodes);
  CHECK(estimate.num_nodes > 0.75 * mesh.num_nodes);
  CHECK(estimate.num_nodes < 1.25 * mesh.num_nodes);
  CHECK(estimate.num_triangles > 0.75 * mesh.num_triangles);
  CHECK(estimate.num_triangles < 1.25 * mesh.num_triangles);
}

PlateGeometry plain(const Outline& outline)
{
  return {
      .outline = outline, .arching = FlatArching{}, .thickness = UniformThickness{0.0025}, .soundholes = {}, .bar = {}};
}

} // namespace

TEST_CASE("the size of a mesh is known within a quarter before it is made")
{
  PlateGeometry slotted = plain(EllipseOutline{0.35, 0.2});
  slotted.soundholes.push_back(Slot{.centre = {0.0, 0.05}, .length = 0.06, .width = 0.003, .angle = {}});
  for (const double size : {0.040, 0.010, 0.005})
    check_estimate(slotted, size);
  for (const double size : {0.024, 0.012, 0.008})
    check_estimate(test::viola_top(), size);
  for (const double size : {0.020, 0.010, 0.006})
    check_estimate(plain(RectangleOutline{0.35, 0.2}), size);
  for (const double size : {0.040, 0.010, 0.005})
    check_estimate(plain(RectangleOutline{1.5, 0.1}), size);
}

TEST_CASE("an estimate costs nothing however fine the mesh")
{
  CHECK(estimate_mesh(plain(RectangleOutline{0.35, 0.2}), {.size = 1e-6}).num_nodes > 1e11);
}
