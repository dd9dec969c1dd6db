// SPDX-License-Identifier: MPL-2.0
// Shells of revolution under pressure: straight two-node elements with shear, one point each, thousands of them. They
// share nothing with the elements under test but the theory: thin isotropic shells, first-order shear deformation.
#pragma once

#include <Eigen/Sparse>
#include <Eigen/SparseCholesky>

#include <cmath>
#include <numbers>
#include <vector>

namespace plate::test
{

class ShellOfRevolution
{
public:
  ShellOfRevolution(double E, double nu) : E_(E), nu_(nu) {}

  int add_node(double r, double z)
  {
    nodes_.emplace_back(r, z);
    return static_cast<int>(nodes_.size()) - 1;
  }

  /// Pressure acts to the left of the way from `from` to `to`.
  void add_element(int from, int to, double thickness) { elements_.push_back({from, to, thickness}); }

  [[nodiscard]] Eigen::Vector2d at(int node) const { return nodes_[static_cast<std::size_t>(node)]; }

  /// Volume by which the free shell gives way to a pressure of 1 [m3/Pa].
  [[nodiscard]] double compliance() const
  {
    const auto n = static_cast<Eigen::Index>(3 * nodes_.size()); // u_r, u_z and the rotation in the plane r, z
    std::vector<Eigen::Triplet<double>> entries;
    Eigen::VectorXd load = Eigen::VectorXd::Zero(n);
    for (const Element& element : elements_)
      add(element, entries, load);
    const double stiff = 1e6 * E_;
    entries.emplace_back(1, 1, 1e-4 * E_); // one node holds the whole, which no net force moves
    for (std::size_t i = 0; i < nodes_.size(); ++i)
      if (nodes_[i].x() == 0.0)
        for (const int held : {0, 2})
          entries.emplace_back(3 * static_cast<int>(i) + held, 3 * static_cast<int>(i) + held, stiff);
    Eigen::SparseMatrix<double> K(n, n);
    K.setFromTriplets(entries.begin(), entries.end());
    return load.dot(Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>>(K).solve(load));
  }

private:
  struct Element
  {
    int from, to;
    double thickness;
  };

  void add(const Element& e, std::vector<Eigen::Triplet<double>>& entries, Eigen::VectorXd& load) const
  {
    const Eigen::Vector2d way = at(e.to) - at(e.from);
    const double L = way.norm();
    const double c = way.x() / L;
    const double s = way.y() / L;
    const double r = 0.5 * (at(e.from) + at(e.to)).x();
    // Strains along the meridian and the circle, curvatures the same way, shear.
    Eigen::Matrix<double, 5, 6> B = Eigen::Matrix<double, 5, 6>::Zero();
    for (int k = 0; k < 2; ++k)
    {
      const double g = (k == 0 ? -1.0 : 1.0) / L;
      B.middleCols<3>(3 * k) << g * c, g * s, 0.0, 0.5 / r, 0.0, 0.0, 0.0, 0.0, g, 0.0, 0.0, 0.5 * c / r, -g * s, g * c,
          -0.5;
    }
    const double h = e.thickness;
    const double A = E_ * h / (1.0 - nu_ * nu_);
    Eigen::Matrix2d plane;
    plane << 1.0, nu_, nu_, 1.0;
    Eigen::Matrix<double, 5, 5> Q = Eigen::Matrix<double, 5, 5>::Zero();
    Q.topLeftCorner<2, 2>() = A * plane;
    Q.block<2, 2>(2, 2) = A * h * h / 12.0 * plane;
    Q(4, 4) = 5.0 / 6.0 * h * E_ / (2.0 * (1.0 + nu_));
    const double area = 2.0 * std::numbers::pi * r * L;
    const Eigen::Matrix<double, 6, 6> K = area * B.transpose() * Q * B;
    const int first[2] = {3 * e.from, 3 * e.to};
    for (int i = 0; i < 6; ++i)
      for (int j = 0; j < 6; ++j)
        entries.emplace_back(first[i / 3] + i % 3, first[j / 3] + j % 3, K(i, j));
    for (const int at : first)
      load.segment<2>(at) += 0.5 * area * Eigen::Vector2d(-s, c);
  }

  double E_, nu_; // [Pa], [-]
  std::vector<Eigen::Vector2d> nodes_;
  std::vector<Element> elements_;
};

} // namespace plate::test
