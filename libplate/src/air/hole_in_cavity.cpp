// SPDX-License-Identifier: MPL-2.0
#include <plate/air/hole_in_cavity.h>

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <array>
#include <cmath>
#include <numbers>

namespace plate
{
namespace
{

using std::numbers::pi;
constexpr double tail = 6.0; // standard deviations beyond which the Gaussian is nothing

/// What is left of the sum over images above and below when its logarithm is taken out.
double image_sum(double r_over_h)
{
  constexpr int num_images = 30; // the rest is summed as -r^2/(16 m^3)
  double sum = 0.0;
  for (int m = 1; m <= num_images; ++m)
    sum += 1.0 / std::sqrt(r_over_h * r_over_h + 4.0 * m * m) - 0.5 / m;
  return sum - r_over_h * r_over_h / (32.0 * std::pow(num_images + 0.5, 2));
}

/// Exponential integral E_1.
double exponential_integral(double y)
{
  return -std::expint(-y);
}

/// Potential on the face of a layer at a distance from a source there, less that of the blurred source that the mesh
/// shows: short of range [1/m].
///
/// Layer between rigid faces: mean over the height, -ln r / (2 pi h), and sum over k of K_0(k pi r / h) / (pi h). The
/// Gaussians of two sources make of ln r: ln r + E_1(r^2 / (4 blur^2)) / 2.
double layer_less_blurred(double r, double height, double blur)
{
  double cross = 0.0;
  for (int k = 1; k * pi * r < 40.0 * height; ++k)
    cross += std::cyl_bessel_k(0.0, k * pi * r / height);
  return cross / (pi * height) + exponential_integral(r * r / (4.0 * blur * blur)) / (4.0 * pi * height);
}

/// Half-space potential 1 / (2 pi r) less layer_less_blurred(): smooth, also where r is 0 [1/m].
double half_space_less_layer(double r, double height, double blur)
{
  // Below this the logarithms cancel: E_1(y) = -gamma - ln y + y.
  const double y = r * r / (4.0 * blur * blur);
  const double logarithms =
      y < 1e-8 ? 0.25 * std::numbers::egamma + 0.5 * std::log(2.0 * blur / (4.0 * height))
               : 0.5 * (std::numbers::egamma + std::log(r / (4.0 * height))) + 0.25 * exponential_integral(y);
  return -(logarithms + image_sum(r / height)) / (pi * height);
}

Eigen::MatrixXd distances(const HoleSpread& a, const HoleSpread& b)
{
  Eigen::MatrixXd distance(static_cast<Eigen::Index>(a.points.size()), static_cast<Eigen::Index>(b.points.size()));
  for (Eigen::Index j = 0; j < distance.cols(); ++j)
    for (Eigen::Index i = 0; i < distance.rows(); ++i)
      distance(i, j) = (a.points[static_cast<std::size_t>(i)] - b.points[static_cast<std::size_t>(j)]).norm();
  return distance;
}

/// Mean of a smooth function of the distance between the flows of two holes.
///
/// By a table of the function: it takes a microsecond, and there are half a million pairs. Straight lines between a
/// thousand values are right to 1e-5.
template <class Function>
double mean(const HoleSpread& a, const HoleSpread& b, const Function& of_distance)
{
  const Eigen::MatrixXd distance = distances(a, b);
  const double least = distance.minCoeff();
  constexpr int steps = 1000;
  const double step = (1.0 + 1e-12) * (distance.maxCoeff() - least) / (steps - 1);
  std::array<double, steps> table = {};
  for (std::size_t i = 0; i < table.size(); ++i)
    table[i] = of_distance(least + step * static_cast<double>(i));
  double sum = 0.0;
  for (Eigen::Index j = 0; j < distance.cols(); ++j)
    for (Eigen::Index i = 0; i < distance.rows(); ++i)
    {
      const double place = (distance(i, j) - least) / step;
      const auto below = static_cast<std::size_t>(place);
      const double share = place - static_cast<double>(below);
      sum += a.shares(i) * b.shares(j) * ((1.0 - share) * table[below] + share * table[below + 1]);
    }
  return sum;
}

/// Density of the blurred flow at a point of the planform [1/m2].
double blurred(const HoleSpread& hole, const Eigen::Vector2d& at, double blur)
{
  double sum = 0.0;
  for (std::size_t i = 0; i < hole.points.size(); ++i)
    sum += hole.shares(static_cast<Eigen::Index>(i)) *
           std::exp(-0.5 * (at - hole.points[i]).squaredNorm() / (blur * blur));
  return sum / (2.0 * pi * blur * blur);
}

/// Load of the blurred flow, spread over the height.
Eigen::VectorXd blurred_flow(const CavitySpace& space, const HoleSpread& hole, double blur)
{
  const ShellMesh& planform = space.mesh().planform;
  Eigen::AlignedBox2d reach;
  for (const Eigen::Vector2d& p : hole.points)
    reach.extend(p);
  reach.min().array() -= tail * blur;
  reach.max().array() += tail * blur;
  Eigen::VectorXd load = Eigen::VectorXd::Zero(space.num_unknowns());
  for (const auto& triangle : planform.triangles)
  {
    Eigen::Matrix<double, 2, CubicTriangle::num_nodes> X;
    Eigen::AlignedBox2d box;
    for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    {
      X.col(i) = planform.nodes[static_cast<std::size_t>(triangle[static_cast<std::size_t>(i)])].head<2>();
      box.extend(X.col(i).eval());
    }
    if (!box.intersects(reach))
      continue;
    for (const TrianglePoint& p : fine_triangle_points())
    {
      const CubicTriangle::Vector N = CubicTriangle::shape(p.xi, p.eta);
      const Eigen::Matrix2d J = X * CubicTriangle::gradient(p.xi, p.eta);
      const double flow = p.weight * std::abs(J.determinant()) * blurred(hole, X * N, blur);
      for (int i = 0; i < CubicTriangle::num_nodes; ++i)
        load(triangle[static_cast<std::size_t>(i)] * (space.degree() + 1)) += flow * N(i);
    }
  }
  return load;
}

/// Height of the cavity at a hole, mean over its flow.
double height_at(const CavitySpace& space, const HoleSpread& hole)
{
  const Eigen::VectorXd heights = space.mesh().top - space.mesh().back;
  const Eigen::VectorXd by_unknown = space.from_nodes(heights);
  double sum = 0.0;
  for (std::size_t i = 0; i < hole.points.size(); ++i)
  {
    const auto values = space.values_at({hole.points[i].x(), hole.points[i].y(), 0.0});
    if (!values)
      throw InvalidInput(message("holes_in_cavity: a hole reaches x = ", hole.points[i].x(), " m, y = ",
                                 hole.points[i].y(), " m, beside the cavity; give both in the axes of the body"));
    sum += hole.shares(static_cast<Eigen::Index>(i)) * values->dot(by_unknown);
  }
  return sum;
}

} // namespace

HolesInCavity holes_in_cavity(const CavitySpace& space, const HoleFlow& holes, double blur)
{
  if (!(blur > 0.0))
    throw InvalidInput(message("holes_in_cavity: the blur must be positive; got ", blur, " m"));
  const auto num_holes = static_cast<Eigen::Index>(holes.spread.size());
  std::vector<double> heights;
  for (const HoleSpread& hole : holes.spread)
    heights.push_back(height_at(space, hole));
  HolesInCavity result = {.flow = Eigen::MatrixXd(space.num_unknowns(), num_holes), .inertance = holes.one_side};
  result.inertance.diagonal() += holes.neck;
  for (Eigen::Index j = 0; j < num_holes; ++j)
  {
    const HoleSpread& hole = holes.spread[static_cast<std::size_t>(j)];
    const double height = heights[static_cast<std::size_t>(j)];
    result.flow.col(j) = blurred_flow(space, hole, blur);
    result.flow.col(j) /= result.flow.col(j).sum(); // what the Gaussian lost beyond the ribs
    result.inertance(j, j) +=
        holes.one_side(j, j) - mean(hole, hole, [&](double r) { return half_space_less_layer(r, height, blur); });
    for (Eigen::Index i = 0; i < j; ++i)
    {
      const double between = 0.5 * (height + heights[static_cast<std::size_t>(i)]);
      const double inside = mean(holes.spread[static_cast<std::size_t>(i)], hole,
                                 [&](double r) { return layer_less_blurred(r, between, blur); });
      result.inertance(i, j) += inside;
      result.inertance(j, i) += inside;
    }
  }
  return result;
}

} // namespace plate
