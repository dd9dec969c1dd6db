// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/post/surface_integral.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;

TEST_CASE("nodal areas of one flat triangle are the integrals of the cubic shape functions")
{
  // Area A: corners A/30, edge nodes 3A/40, centre 9A/20 (integrals of the polynomials by hand).
  const ShellMesh mesh = test::rectangle(0.2, 0.1, 1, 1, 1e-3);
  const double A = 0.01;
  const Eigen::VectorXd area = nodal_areas(mesh);
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
  {
    int corner_of = 0, edge_of = 0, centre_of = 0;
    for (const auto& triangle : mesh.triangles)
      for (std::size_t k = 0; k < 10; ++k)
        if (triangle[k] == static_cast<int>(i))
          (k < 3 ? corner_of : k < 9 ? edge_of : centre_of)++;
    CHECK(area(static_cast<Eigen::Index>(i)) ==
          doctest::Approx(A * (corner_of / 30.0 + edge_of * 3.0 / 40.0 + centre_of * 9.0 / 20.0)).epsilon(1e-12));
  }
}

TEST_CASE("nodal areas integrate cubic fields over a flat plate exactly")
{
  ShellMesh mesh = test::rectangle(0.2, 0.1, 4, 3, 1e-3);
  test::distort(mesh, 0.2, 0.1, 0.05);
  test::straighten_edges(mesh);
  const Eigen::VectorXd area = nodal_areas(mesh);
  CHECK(area.sum() == doctest::Approx(0.02).epsilon(1e-12));
  Eigen::VectorXd f(area.size());
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
  {
    const double x = mesh.nodes[i].x(), y = mesh.nodes[i].y();
    f(static_cast<Eigen::Index>(i)) = x * x + 3.0 * x * y * y + y * y * y;
  }
  CHECK(area.dot(f) == doctest::Approx(0.02 * 0.04 / 12.0).epsilon(1e-10)); // odd terms vanish, x^2 averages L^2/12
}

TEST_CASE("displacement along the normal is the projection on it")
{
  ShellMesh mesh = test::rectangle(0.2, 0.1, 1, 1, 1e-3);
  mesh.normals[3] = Eigen::Vector3d(0.6, 0.0, 0.8);
  Eigen::Matrix3Xd u = Eigen::Matrix3Xd::Zero(3, static_cast<Eigen::Index>(mesh.nodes.size()));
  u.col(3) << 1.0, 5.0, 2.0;
  const Eigen::VectorXd w = normal_displacement(mesh, u);
  CHECK(w(3) == doctest::Approx(2.2));
  CHECK(w(2) == 0.0);
}
