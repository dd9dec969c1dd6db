// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/elements/shell_triangle.h>

#include <Eigen/Core>

#include <array>
#include <span>

namespace plate
{

/// A point mass on a triangle.
struct TriangleMass
{
  double mass; ///< [kg]
  double xi;   ///< natural coordinates [-]
  double eta;
};

/// Approximate modes on one triangle.
struct TriangleModes
{
  const ShellTriangle::Displacements& shapes; ///< unknowns of the nodes, (50, n); outlive this
  const Eigen::VectorXd& eigenvalues;         ///< squares of the angular frequencies, (n) [1/s2]
  std::span<const TriangleMass> masses = {};
};

/// The ShellTriangle with displacements and rotations enriched to quartic polynomials on the same cubic geometry: what
/// is needed to see the error of the cubic element.
///
/// Each edge has three functions with five unknowns each, those of a node of ShellTriangle: its two nodes, then its
/// bubble. Rotations of a bubble are about the tangents at the mean of the directors of the edge's ends, so that
/// neighbours agree. The functions inside the triangle, centre node and two bubbles, are eliminated. Corners are held.
struct EnrichedTriangle
{
  static constexpr int num_edge_dofs = 15;
  using EdgeMatrix = Eigen::Matrix<double, num_edge_dofs, num_edge_dofs>;
  using EdgeVectors = Eigen::Matrix<double, num_edge_dofs, Eigen::Dynamic>;

  /// Stiffness of the functions of one edge and what modes leave over on them, r = lambda M u - K u, on nodes none.
  struct Edge
  {
    EdgeMatrix stiffness;  ///< [N/m, N, N m]
    EdgeVectors residuals; ///< (15, n) [N, N m]
  };

  std::array<Edge, 3> edges;     ///< 0-1, 1-2, 2-0
  Eigen::VectorXd inner;         ///< r^T K^-1 r of the eliminated functions, (n) [J]
  Eigen::VectorXd twice_strain;  ///< u^T K u of the modes, (n) [J]
  Eigen::VectorXd twice_kinetic; ///< u^T M u of the modes, (n) [J s2]
};

/// Tests modes with quartic displacements on one triangle.
///
/// Residuals and energies are integrated by a rule of higher degree than that of ShellTriangle: what the energies
/// differ by is the error of its quadrature, none on flat triangles of constant section. The stiffness is that of the
/// strains and the section at the centre on a triangle with straight sides: it only weighs residuals.
/// @param out  is overwritten
void enrich(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
            const TriangleModes& modes, EnrichedTriangle& out);

} // namespace plate
