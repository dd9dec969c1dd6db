// SPDX-License-Identifier: MPL-2.0
#include <plate/air/cavity_space.h>

#include "height_profile.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/quadrature.h>

#include <Eigen/LU>

#include <algorithm>
#include <vector>

namespace plate
{
namespace
{

/// Heights below this share of the largest count as this: the layer thins out to nothing without dividing by it.
constexpr double least_height = 1e-3;

/// Geometry and shape functions of the planform at a point of a triangle.
struct PlanformPoint
{
  CubicTriangle::Vector N;
  CubicTriangle::Gradient dN; ///< along x and y [1/m]
  double area;                ///< weight of the point [m2]
  double height;              ///< [m]
  Eigen::Vector2d rise;       ///< gradient of back + top [-]
  Eigen::Vector2d growth;     ///< gradient of the height [-]
};

class Element
{
public:
  Element(const CavityMesh& mesh, std::size_t triangle, double floor) : floor_(floor)
  {
    for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    {
      const int node = mesh.planform.triangles[triangle][static_cast<std::size_t>(i)];
      X_.row(i) = mesh.planform.nodes[static_cast<std::size_t>(node)].head<2>();
      back_(i) = mesh.back(node);
      top_(i) = mesh.top(node);
    }
  }

  [[nodiscard]] PlanformPoint at(const TrianglePoint& p) const
  {
    const CubicTriangle::Gradient natural = CubicTriangle::gradient(p.xi, p.eta);
    const Eigen::Matrix2d J = natural.transpose() * X_; // rows: derivatives along xi, eta
    PlanformPoint point;
    point.N = CubicTriangle::shape(p.xi, p.eta);
    point.dN = natural * J.inverse().transpose();
    point.area = p.weight * std::abs(J.determinant());
    const double height = point.N.dot(top_ - back_);
    point.height = std::max(height, floor_);
    point.rise = point.dN.transpose() * (back_ + top_);
    point.growth = height > floor_ ? Eigen::Vector2d(point.dN.transpose() * (top_ - back_)) : Eigen::Vector2d::Zero();
    return point;
  }

private:
  Eigen::Matrix<double, CubicTriangle::num_nodes, 2> X_;
  CubicTriangle::Vector back_;
  CubicTriangle::Vector top_;
  double floor_;
};

/// Gradients of all pressures of an element, (3, 10 (degree + 1)), at a height.
Eigen::Matrix3Xd gradients(const PlanformPoint& p, const HeightProfile& profile, double zeta)
{
  const Eigen::Index orders = profile.value.size();
  const Eigen::Vector2d zeta_slope = -(p.rise + zeta * p.growth) / p.height;
  Eigen::Matrix3Xd G(3, CubicTriangle::num_nodes * orders);
  for (Eigen::Index i = 0; i < CubicTriangle::num_nodes; ++i)
    for (Eigen::Index k = 0; k < orders; ++k)
    {
      const double slope = p.N(i) * profile.derivative(k);
      G.col(i * orders + k) << p.dN.row(i).transpose() * profile.value(k) + slope * zeta_slope, slope * 2.0 / p.height;
    }
  return G;
}

Eigen::VectorXd values(const CubicTriangle::Vector& N, const HeightProfile& profile)
{
  Eigen::VectorXd v(N.size() * profile.value.size());
  for (Eigen::Index i = 0; i < N.size(); ++i)
    v.segment(i * profile.value.size(), profile.value.size()) = N(i) * profile.value;
  return v;
}

double lowest_height(const CavityMesh& mesh)
{
  return least_height * (mesh.top - mesh.back).maxCoeff();
}

/// Sums element matrices, each the sum of factor(point, profile, zeta) times its transpose, into a lower triangle.
template <class Factor>
SparseMatrix assembled(const CavityMesh& mesh, int degree, const Factor& factor)
{
  const LinePoints line = line_points(degree + 2); // zeta times P_degree, squared: 2 degree + 2
  std::vector<HeightProfile> profiles;
  for (const double zeta : line.at)
    profiles.push_back(height_profile(degree, zeta));
  const Eigen::Index orders = degree + 1;
  const Eigen::Index size = CubicTriangle::num_nodes * orders;
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(mesh.planform.triangles.size() * static_cast<std::size_t>(size * (size + 1) / 2));
  for (std::size_t t = 0; t < mesh.planform.triangles.size(); ++t)
  {
    const Element element(mesh, t, lowest_height(mesh));
    Eigen::MatrixXd sum = Eigen::MatrixXd::Zero(size, size);
    for (const TrianglePoint& p : quartic_triangle_points())
    {
      const PlanformPoint point = element.at(p);
      for (Eigen::Index i = 0; i < line.at.size(); ++i)
      {
        const auto rows = factor(point, profiles[static_cast<std::size_t>(i)], line.at(i));
        sum.noalias() += (point.area * 0.5 * point.height * line.weight(i)) * rows.transpose() * rows;
      }
    }
    const auto unknown = [&](Eigen::Index i)
    { return mesh.planform.triangles[t][static_cast<std::size_t>(i / orders)] * orders + i % orders; };
    for (Eigen::Index j = 0; j < size; ++j)
      for (Eigen::Index i = 0; i < size; ++i)
        if (unknown(i) >= unknown(j))
          entries.emplace_back(static_cast<int>(unknown(i)), static_cast<int>(unknown(j)), sum(i, j));
  }
  const Eigen::Index n = mesh.back.size() * orders;
  SparseMatrix lower(n, n);
  lower.setFromTriplets(entries.begin(), entries.end());
  return lower;
}

} // namespace

CavitySpace::CavitySpace(const CavityMesh& mesh, int degree) : mesh_(mesh), degree_(degree), locator_(mesh.planform)
{
  check_cavity(mesh);
  if (degree < 0)
    throw InvalidInput(message("CavitySpace: the degree through the height must be at least 0; got ", degree));
}

Eigen::Index CavitySpace::num_unknowns() const
{
  return mesh_.back.size() * (degree_ + 1);
}

double CavitySpace::volume() const
{
  double volume = 0.0;
  for (std::size_t t = 0; t < mesh_.planform.triangles.size(); ++t)
  {
    const Element element(mesh_, t, lowest_height(mesh_));
    for (const TrianglePoint& p : quartic_triangle_points())
    {
      const PlanformPoint point = element.at(p);
      volume += point.area * point.height;
    }
  }
  return volume;
}

Eigen::VectorXd CavitySpace::uniform() const
{
  return from_nodes(Eigen::VectorXd::Ones(mesh_.back.size()));
}

Eigen::VectorXd CavitySpace::from_nodes(const Eigen::VectorXd& nodal) const
{
  Eigen::VectorXd p = Eigen::VectorXd::Zero(num_unknowns());
  p(Eigen::seqN(0, nodal.size(), degree_ + 1)) = nodal;
  return p;
}

SparseMatrix CavitySpace::gradient_form() const
{
  return assembled(mesh_, degree_, gradients);
}

SparseMatrix CavitySpace::value_form() const
{
  return assembled(mesh_, degree_,
                   [](const PlanformPoint& p, const HeightProfile& profile, double)
                   { return values(p.N, profile).transpose().eval(); });
}

double CavitySpace::zeta_at(double z, double back, double top) const
{
  const double height = std::max(top - back, lowest_height(mesh_));
  return std::clamp((2.0 * z - back - top) / height, -1.0, 1.0);
}

Eigen::SparseVector<double> CavitySpace::values_in(std::size_t triangle, double xi, double eta, double zeta) const
{
  const CubicTriangle::Vector N = CubicTriangle::shape(xi, eta);
  const HeightProfile profile = height_profile(degree_, zeta);
  Eigen::SparseVector<double> values(num_unknowns());
  values.reserve(N.size() * profile.value.size());
  for (Eigen::Index i = 0; i < N.size(); ++i)
    for (Eigen::Index k = 0; k <= degree_; ++k)
      values.coeffRef(mesh_.planform.triangles[triangle][static_cast<std::size_t>(i)] * (degree_ + 1) + k) =
          N(i) * profile.value(k);
  return values;
}

Eigen::SparseVector<double> CavitySpace::values_on_edge(const EdgePlace& place, double z) const
{
  const std::array<double, 2> shares = {1.0 - place.share, place.share};
  double back = 0.0;
  double top = 0.0;
  for (std::size_t i = 0; i < 2; ++i)
  {
    back += shares[i] * mesh_.back(place.nodes[i]);
    top += shares[i] * mesh_.top(place.nodes[i]);
  }
  const HeightProfile profile = height_profile(degree_, zeta_at(z, back, top));
  Eigen::SparseVector<double> values(num_unknowns());
  for (std::size_t i = 0; i < 2; ++i)
    for (Eigen::Index k = 0; k <= degree_; ++k)
      values.coeffRef(place.nodes[i] * (degree_ + 1) + k) += shares[i] * profile.value(k);
  return values;
}

std::optional<Eigen::SparseVector<double>> CavitySpace::values_at(const Eigen::Vector3d& point) const
{
  const auto found = locator_.locate(point.head<2>());
  if (!found)
    return {};
  const CubicTriangle::Vector N = CubicTriangle::shape(found->xi, found->eta);
  double back = 0.0;
  double top = 0.0;
  for (Eigen::Index i = 0; i < N.size(); ++i)
  {
    const int node = mesh_.planform.triangles[found->triangle][static_cast<std::size_t>(i)];
    back += N(i) * mesh_.back(node);
    top += N(i) * mesh_.top(node);
  }
  return values_in(found->triangle, found->xi, found->eta, zeta_at(point.z(), back, top));
}

Eigen::VectorXd CavitySpace::mean_over_height(const Eigen::VectorXd& p) const
{
  return p(Eigen::seqN(0, mesh_.back.size(), degree_ + 1));
}

} // namespace plate
