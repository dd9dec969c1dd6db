// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/loads.h>
#include <plate/solvers/sparse_cholesky.h>

#include <Eigen/Core>

#include <memory>
#include <string>

namespace plate
{

/// A plate at rest under a load, with the evidence that it is.
struct StaticResult
{
  Eigen::VectorXd x = {}; ///< vector of unknowns [m, rad]
  double energy = 0.0;    ///< of strain, supports included, x^T K x / 2 [J]
  double work = 0.0;      ///< load times displacement, f^T x; twice the energy [J]
  double residual = 0.0;  ///< |K x - f| / |f| of the refined solution, 0 without load [-]

  [[nodiscard]] std::string summary() const;
};

/// Deflection under loads of one assembled plate; it keeps the factorised matrix.
///
/// A plate that can still move rigidly carries only loads in equilibrium. It is held for the solution at as many single
/// unknowns as it has motions, where no force arises then, and comes back without rigid motion (in the sense of the
/// mass). Solutions are refined in long double; x is rounded at the end, which a plate that is much stiffer along than
/// across feels in the last digits of its forces.
/// @source pinned by tests/unit/solvers/statics_test.cpp and tests/reference
class StaticSolver
{
public:
  /// @param system  must outlive the solver
  /// @throws NumericalFailure if the matrix cannot be factorised
  explicit StaticSolver(const System& system);
  ~StaticSolver();
  StaticSolver(StaticSolver&&) noexcept;
  StaticSolver& operator=(StaticSolver&&) noexcept;

  /// @param load  by unknowns, see on_unknowns() [N, N m]
  /// @throws InvalidInput if the plate can move rigidly and the load is not in equilibrium (balanced_by_inertia)
  /// @throws NumericalFailure if the solution is not finite
  [[nodiscard]] StaticResult solve(const Eigen::VectorXd& load) const;

  /// Work of each of several loads on the deflection that it makes, (columns of loads) [J]; many at little cost.
  ///
  /// @param loads  by unknowns, one column each; of a plate that is held
  [[nodiscard]] Eigen::VectorXd compliances(const Eigen::MatrixXd& loads) const;

  [[nodiscard]] const System& system() const;

  /// Of the stiffness, held where the plate can move rigidly.
  [[nodiscard]] const SparseCholesky& factor() const;

private:
  struct Implementation;
  std::unique_ptr<Implementation> implementation_;
};

/// One load only.
[[nodiscard]] StaticResult solve_statics(const System& system, const Eigen::VectorXd& load);

/// How far a load is from equilibrium on what can move: what its forces leave to a rigid motion over what they would do
/// to one if none worked against another, motions and forces each at their greatest [-].
[[nodiscard]] double imbalance(const System& system, const Eigen::VectorXd& load);

/// The load and the inertia of the rigid motion that it sets a plate into: what the plate feels of a blow that is slow
/// beside its own vibration.
[[nodiscard]] Eigen::VectorXd balanced_by_inertia(const System& system, const Eigen::VectorXd& load);

/// Balance of a supported plate.
struct Balance
{
  NodalUnknowns reactions;              ///< of held unknowns and beds on the plate [N, N m]
  Eigen::Matrix<double, 6, 1> load;     ///< force and moment about the origin [N, N m]
  Eigen::Matrix<double, 6, 1> reaction; ///< of the reactions [N, N m]
  double error = 0.0;                   ///< |sum of forces| over the sum of their absolute values [-]
};

/// Reactions from the forces of the elements at the supports, independent of the solution of the equations.
///
/// @param loads  all of them, those on held unknowns too
[[nodiscard]] Balance support_balance(const Model& model, const DofMap& dofs, const NodalUnknowns& displacements,
                                      const NodalUnknowns& loads, const std::vector<SupportBed>& beds = {});

} // namespace plate
