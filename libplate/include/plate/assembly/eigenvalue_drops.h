// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/dof_map.h>
#include <plate/assembly/model.h>

#include <Eigen/Core>

namespace plate
{

/// Approximate eigenvectors of an assembled model.
struct ApproximateModes
{
  const Eigen::MatrixXd& shapes;      ///< vectors of unknowns, (num_equations, n), M-orthonormal; outlive this
  const Eigen::VectorXd& eigenvalues; ///< squares of the angular frequencies, (n) [1/s2]
};

/// What is wrong with eigenvalues, as far as quartic displacements on the same mesh tell.
struct EigenvalueDrops
{
  /// Energy of the corrections by quartic displacements, summed over small problems, (n) [1/s2].
  Eigen::VectorXd enrichment;
  /// What the true thickness would change, and exact integration on curved triangles and at jumps of the section: it
  /// may have either sign, (n) [1/s2].
  Eigen::VectorXd data;
};

/// Tests modes with quartic displacements (enrich()).
///
/// A problem for each edge of the mesh: the displacements of its two triangles that vanish on all other edges, cubic
/// ones included, without which thin plates would seem too stiff. Their energies add up to 0.7 to 1.1 of what one
/// problem for all quartic displacements of the plate gives, at a small part of its cost.
/// Cost: about that of assembly for twelve modes, in time; in memory 4 kB per edge.
/// @throws InvalidInput  if a point mass lies beside the plate
[[nodiscard]] EigenvalueDrops eigenvalue_drops(const Model& model, const DofMap& dofs, const ApproximateModes& modes);

} // namespace plate
