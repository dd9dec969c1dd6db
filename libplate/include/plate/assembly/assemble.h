// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/dof_map.h>
#include <plate/assembly/model.h>

#include <Eigen/SparseCore>

#include <memory>

namespace plate
{

using SparseMatrix = Eigen::SparseMatrix<double>;

/// Stiffness and mass of a model, symmetric, lower triangles stored, with what a solver needs beside them.
struct System
{
  DofMap dofs;
  SparseMatrix K;                    ///< stiffness, lower triangle [N/m, N, N m]
  SparseMatrix M;                    ///< mass, lower triangle, same pattern as K [kg, kg m, kg m2]
  Eigen::MatrixXd rigid_motions;     ///< motions that carry no energy, (num_equations, 0...6)
  double typical_frequency_hz = 0.0; ///< order of magnitude of the lowest bending mode; scales a solver's shift [Hz]
  double mass = 0.0;                 ///< plate and bars [kg]
  Eigen::Vector3d centre_of_gravity = Eigen::Vector3d::Zero(); ///< [m]
};

struct AssemblyPlan;

/// Assembles models one after the other. Models of the same triangles and supports share the pattern of the matrices
/// and where the elements go in it.
class Assembler
{
public:
  Assembler();
  ~Assembler();
  Assembler(Assembler&&) noexcept;
  Assembler& operator=(Assembler&&) noexcept;

  /// Stiffness and mass of a model.
  ///
  /// The same input gives the same bits, whatever num_threads(). Cost: linear in the number of triangles.
  /// @throws InvalidInput if the model is inconsistent (see check_model) or a point mass lies beside the plate
  [[nodiscard]] System assemble(const Model& model);

private:
  std::unique_ptr<const AssemblyPlan> plan_; ///< of the last model
};

/// Stiffness and mass of one model, see Assembler::assemble().
[[nodiscard]] System assemble(const Model& model);

} // namespace plate
