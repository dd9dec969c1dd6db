// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/cavity_mesh.h>
#include <plate/assembly/assemble.h>
#include <plate/mesh/locate.h>

#include <array>
#include <optional>

namespace plate
{

/// Pressures in a cavity: cubic in the planform, a polynomial through the height.
///
/// Unknowns go node by node, the coefficients of the Legendre polynomials of zeta in order at each; zeta is -1 on the
/// back and 1 on the top. Degree 0 is the height-weighted planform equation div(h grad p) + k^2 h p = 0: good for the
/// modes of the air. The flow close to a wall that moves in short waves needs more.
/// @source pinned by tests/unit/air/cavity_space_test.cpp
class CavitySpace
{
public:
  /// @param mesh    must outlive the space
  /// @param degree  of the polynomial through the height, at least 0
  /// @throws InvalidInput as check_cavity(), or if the degree is negative
  explicit CavitySpace(const CavityMesh& mesh, int degree = 2);

  [[nodiscard]] const CavityMesh& mesh() const { return mesh_; }
  [[nodiscard]] int degree() const { return degree_; }
  [[nodiscard]] Eigen::Index num_unknowns() const;

  /// Volume of the air [m3].
  [[nodiscard]] double volume() const;

  /// Unknowns of a pressure of 1 everywhere, (num_unknowns).
  [[nodiscard]] Eigen::VectorXd uniform() const;

  /// Integrals of grad p . grad q [m] and of p q [m3] over the cavity, lower triangles.
  [[nodiscard]] SparseMatrix gradient_form() const;
  [[nodiscard]] SparseMatrix value_form() const;

  /// Adds a flow out of the cavity at a point: load(i) += flow * (value of pressure i there).
  ///
  /// Points above the top or below the back count as on them.
  /// @return false, and nothing is added, if the planform does not lie under the point
  bool add_flow(const Eigen::Vector3d& point, double flow, Eigen::Ref<Eigen::VectorXd> load) const;

  /// Pressure at a point; nothing beside the planform.
  [[nodiscard]] std::optional<double> pressure(const Eigen::VectorXd& p, const Eigen::Vector3d& point) const;

  /// Mean pressure over the height at each node, (num_nodes): for pictures.
  [[nodiscard]] Eigen::VectorXd mean_over_height(const Eigen::VectorXd& p) const;

private:
  /// A point of the cavity: the nodes of its triangle and the pressures of their unknowns.
  struct Place
  {
    std::array<int, ShellMesh::nodes_per_triangle> nodes;
    Eigen::VectorXd values; ///< node by node, (nodes_per_triangle (degree + 1))
  };
  [[nodiscard]] std::optional<Place> place_of(const Eigen::Vector3d& point) const;

  const CavityMesh& mesh_;
  int degree_;
  PointLocator locator_;
};

} // namespace plate
