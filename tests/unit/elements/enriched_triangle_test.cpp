// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/elements/enriched_triangle.h>
#include <plate/elements/quartic_bubbles.h>

#include <doctest/doctest.h>

#include <Eigen/Eigenvalues>

#include <cmath>

using namespace plate;

namespace
{

/// The first triangle of an arched or flat plate of carved spruce.
struct OneTriangle
{
  Model model;
  ElementInput input;

  explicit OneTriangle(double height)
      : model(test::plate_model(test::grid_mesh({.x = {-0.1, 0.04, 0.1},
                                                 .y = {-0.05, 0.01, 0.05},
                                                 .surface = test::biparabolic(0.2, 0.1, height),
                                                 .thickness = 3e-3}),
                                test::solid(test::reference_spruce(), 3e-3, 20, Grain::carved))),
        input(element_input(model, 0, triangle_covers(model)[0]))
  {
  }

  [[nodiscard]] EnrichedTriangle enriched(const ShellTriangle::Displacements& shapes, double eigenvalue,
                                          std::span<const TriangleMass> masses = {}) const
  {
    EnrichedTriangle out;
    enrich(input.nodes, model.material, input.parts,
           {.shapes = shapes, .eigenvalues = Eigen::VectorXd::Constant(shapes.cols(), eigenvalue), .masses = masses},
           out);
    return out;
  }
};

/// Displacements without a pattern, the same on every run.
ShellTriangle::Displacements some_shapes(Eigen::Index count)
{
  ShellTriangle::Displacements u(ShellTriangle::num_dofs, count);
  for (Eigen::Index i = 0; i < u.size(); ++i)
    u(i) = std::sin(1.0 + 2.3 * static_cast<double>(i));
  return u;
}

double largest_residual(const EnrichedTriangle& triangle)
{
  double largest = 0.0;
  for (const EnrichedTriangle::Edge& edge : triangle.edges)
    largest = std::max(largest, edge.residuals.cwiseAbs().maxCoeff());
  return largest;
}

} // namespace

TEST_CASE("on a flat triangle the energies are those of the cubic element")
{
  // Both are integrated exactly there, by different rules.
  const OneTriangle one(0.0);
  const ShellTriangle::Displacements u = some_shapes(3);
  const EnrichedTriangle enriched = one.enriched(u, 1e6);
  ShellTriangle::Matrix K;
  ShellTriangle::Matrix M;
  ShellTriangle::stiffness(one.input.nodes, one.model.material, one.input.parts, K);
  ShellTriangle::mass(one.input.nodes, one.model.material, one.input.parts, M);
  for (Eigen::Index mode = 0; mode < u.cols(); ++mode)
  {
    CHECK(enriched.twice_strain(mode) / u.col(mode).dot(K * u.col(mode)) == doctest::Approx(1.0).epsilon(1e-11));
    CHECK(enriched.twice_kinetic(mode) / u.col(mode).dot(M * u.col(mode)) == doctest::Approx(1.0).epsilon(1e-11));
  }
}

TEST_CASE("rigid motions of a curved triangle leave nothing over; other displacements do")
{
  const OneTriangle one(0.02);
  const EnrichedTriangle other = one.enriched(some_shapes(1), 0.0);
  const EnrichedTriangle rigid =
      one.enriched(ShellTriangle::rigid_motions(one.input.nodes, one.model.material.axes), 0.0);
  CHECK(largest_residual(other) > 0.0);
  CHECK(largest_residual(rigid) < 1e-11 * largest_residual(other));
  CHECK(rigid.inner.maxCoeff() < 1e-20 * other.inner(0));
  CHECK(rigid.twice_strain.maxCoeff() < 1e-20 * other.twice_strain(0));
}

TEST_CASE("constant stress on a flat triangle does no work on what vanishes on its edges")
{
  const OneTriangle one(0.0);
  ShellTriangle::Displacements u = ShellTriangle::Displacements::Zero(ShellTriangle::num_dofs, 1);
  for (int node = 0; node < ShellTriangle::num_nodes; ++node)
  {
    const Eigen::Vector3d x = one.input.nodes.position.col(node);
    u.middleRows<3>(5 * node) = Eigen::Vector3d(2.0 * x.x() + 0.7 * x.y(), 0.3 * x.x() - x.y(), 0.0);
  }
  const EnrichedTriangle stretched = one.enriched(u, 0.0);
  CHECK(stretched.inner(0) < 1e-22 * stretched.twice_strain(0));
  CHECK(largest_residual(stretched) > 0.0); // the edge carries the stress to its neighbour
}

TEST_CASE("the stiffness of each edge is symmetric and positive")
{
  const OneTriangle one(0.02);
  for (const EnrichedTriangle::Edge& edge : one.enriched(some_shapes(1), 0.0).edges)
  {
    CHECK((edge.stiffness - edge.stiffness.transpose()).norm() < 1e-13 * edge.stiffness.norm());
    const Eigen::SelfAdjointEigenSolver<EnrichedTriangle::EdgeMatrix> eigen(edge.stiffness, Eigen::EigenvaluesOnly);
    CHECK(eigen.eigenvalues()(0) > 1e-10 * eigen.eigenvalues()(14)); // metres and radians: eigenvalues of many sizes
  }
}

TEST_CASE("a point mass on a plate that moves as a whole pushes the bubbles under it")
{
  // r = lambda m N; on the bubble of edge 0 at its middle, where no other function but those of its nodes is not zero.
  constexpr double lambda = 1e6;
  constexpr double mass = 5e-3;
  const OneTriangle one(0.0);
  const ShellTriangle::Displacements lift =
      ShellTriangle::rigid_motions(one.input.nodes, one.model.material.axes).col(2);
  const TriangleMass clay = {.mass = mass, .xi = 0.5, .eta = 0.0};
  const EnrichedTriangle with = one.enriched(lift, lambda, std::array{clay});
  const EnrichedTriangle without = one.enriched(lift, lambda);
  CHECK(with.twice_kinetic(0) - without.twice_kinetic(0) == doctest::Approx(mass));
  const double push = with.edges[0].residuals(12, 0) - without.edges[0].residuals(12, 0);
  CHECK(push == doctest::Approx(lambda * mass * QuarticBubbles::value(0.5, 0.0)(0)));
  for (const std::size_t other : {1u, 2u})
    CHECK((with.edges[other].residuals - without.edges[other].residuals).norm() < 1e-12 * push);
}

TEST_CASE("thickness beyond that of the nodes changes mass and stiffness as the true thickness does")
{
  // The mass of a triangle is density times volume. Mean of the edge's bubble 81 ab (3a - 1)(3b - 1) by the exact means
  // of a^i b^j over a triangle, 2 i! j! / (i + j + 2)!.
  OneTriangle one(0.0);
  const auto mean = [](int i, int j) { return 2.0 * std::tgamma(i + 1) * std::tgamma(j + 1) / std::tgamma(i + j + 3); };
  const double bubble = 81.0 * (9.0 * mean(2, 2) - 6.0 * mean(2, 1) + mean(1, 1));
  const ShellTriangle::Displacements lift =
      ShellTriangle::rigid_motions(one.input.nodes, one.model.material.axes).col(2);
  const double before = one.enriched(lift, 0.0).twice_kinetic(0);
  constexpr double more = 5e-4;
  one.input.nodes.thickness_bubbles(0) = more;
  const double after = one.enriched(lift, 0.0).twice_kinetic(0);
  CHECK(after / before - 1.0 == doctest::Approx(bubble * more / 3e-3).epsilon(1e-9));
}
