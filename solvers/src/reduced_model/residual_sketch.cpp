// SPDX-License-Identifier: MPL-2.0
#include "residual_sketch.h"

#include "../sparse_combination.h"

#include <plate/solvers/sparse_cholesky.h>

#include <Eigen/Cholesky>

#include <cmath>
#include <cstdint>
#include <numbers>

namespace plate::reduced
{

namespace
{

/// Normally distributed numbers, the same on every machine.
class NormalNumbers
{
public:
  double next()
  {
    // @source [Box1958]
    const double radius = std::sqrt(-2.0 * std::log(uniform()));
    return radius * std::cos(2.0 * std::numbers::pi * uniform());
  }

private:
  double uniform()
  {
    state_ = 6364136223846793005ULL * state_ + 1442695040888963407ULL; // linear congruential, [Knuth1998] sec. 3.3.4
    return (static_cast<double>(state_ >> 11) + 0.5) / 9007199254740992.0;
  }
  std::uint64_t state_ = 1;
};

/// A factor F of a positive semi-definite element matrix, F F^T = matrix up to its rounding.
ElementMatrix factor_of(const ElementMatrix& matrix)
{
  const Eigen::LDLT<ElementMatrix> ldlt(matrix);
  const ElementMatrix lower = ldlt.matrixL();
  const Eigen::Matrix<double, ShellTriangle::num_dofs, 1> root = ldlt.vectorD().cwiseMax(0.0).cwiseSqrt();
  return ldlt.transpositionsP().transpose() * (lower * root.asDiagonal()).eval();
}

} // namespace

Vectors energy_fields(const Model& model, const System& system, double shift, Eigen::Index count)
{
  const std::vector<TriangleCover> covers = triangle_covers(model);
  NormalNumbers normal;
  Vectors forces = Vectors::Zero(system.dofs.num_equations, count);
  ElementMatrix stiffness;
  ElementMatrix mass;
  Eigen::Matrix<double, ShellTriangle::num_dofs, Eigen::Dynamic, Eigen::RowMajor> random(ShellTriangle::num_dofs,
                                                                                         count);
  for (std::size_t t = 0; t < covers.size(); ++t)
  {
    element_matrix(Form::stiffness, model, t, covers[t], stiffness);
    element_matrix(Form::mass, model, t, covers[t], mass);
    for (double& value : random.reshaped())
      value = normal.next();
    random = factor_of(stiffness + shift * mass) * random.eval();
    for_each_unknown(model.mesh, system.dofs, t,
                     [&](int row, int equation) { forces.row(equation) += random.row(row); });
  }
  const SparseCholesky factor(combination(system.K, shift, system.M), unknowns_by_node(system.dofs));
  const Eigen::MatrixXd right = forces;
  Eigen::MatrixXd fields(right.rows(), right.cols());
  factor.solve(right, fields);
  return fields;
}

} // namespace plate::reduced
