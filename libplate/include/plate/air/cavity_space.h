// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/cavity_mesh.h>
#include <plate/assembly/assemble.h>
#include <plate/mesh/locate.h>

#include <Eigen/SparseCore>

#include <array>
#include <optional>

namespace plate
{

/// Pressures in a cavity: cubic in the planform, a polynomial through the height.
///
/// Unknowns go node by node, the coefficients of the Legendre polynomials of zeta in order at each; zeta is -1 on the
/// back and 1 on the top. Degree 0 is the height-weighted planform equation div(h grad p) + k^2 h p = 0: good for the
/// modes of the air, 0.13 % high on a strongly domed cavity. The flow close to a wall that moves in short waves needs
/// more: a spruce plate on a box 35 mm deep has frequencies 0.5 % high with degree 0, 0.15 % with 1, 0.003 % with 2.
/// @source pinned by tests/unit/air/cavity_modes_test.cpp
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

  /// Unknowns of a pressure that is the same over the height, from its values at the nodes.
  [[nodiscard]] Eigen::VectorXd from_nodes(const Eigen::VectorXd& nodal) const;

  /// Integrals of grad p . grad q [m] and of p q [m3] over the cavity, lower triangles.
  [[nodiscard]] SparseMatrix gradient_form() const;
  [[nodiscard]] SparseMatrix value_form() const;

  /// A place on the edge of the planform: between two neighbouring nodes.
  struct EdgePlace
  {
    std::array<int, 2> nodes;
    double share; ///< 0 at the first node, 1 at the second [-]
  };

  /// Values of the pressures, by unknown, (num_unknowns): in a triangle at a zeta, and on the edge at a z [m].
  [[nodiscard]] Eigen::SparseVector<double> values_in(std::size_t triangle, double xi, double eta, double zeta) const;
  [[nodiscard]] Eigen::SparseVector<double> values_on_edge(const EdgePlace& place, double z) const;

  /// Values of the pressures at a point, by unknown; nothing beside the planform.
  ///
  /// Points above the top or below the back count as on them.
  [[nodiscard]] std::optional<Eigen::SparseVector<double>> values_at(const Eigen::Vector3d& point) const;

  /// Mean pressure over the height at each node, (num_nodes): for pictures.
  [[nodiscard]] Eigen::VectorXd mean_over_height(const Eigen::VectorXd& p) const;

private:
  /// zeta of a z where back and top are at these heights.
  [[nodiscard]] double zeta_at(double z, double back, double top) const;

  const CavityMesh& mesh_;
  int degree_;
  PointLocator locator_;
};

} // namespace plate
