// SPDX-License-Identifier: MPL-2.0
#include "arpack_modes.h"

#include <plate/core/error.h>

#include <arpack/arpack.hpp>

#include <array>
#include <vector>

namespace plate::benchmarks
{
namespace
{

using Vector = Eigen::Map<Eigen::VectorXd>;

void take_out_rigid(const Eigenproblem& problem, Eigen::Ref<Eigen::VectorXd> x)
{
  x.noalias() -= problem.rigid * (problem.rigid_mass.transpose() * x).eval();
}

/// ARPACK's variables between its calls.
struct Process
{
  a_int n;
  a_int num_wanted;
  a_int krylov_size;
  double tolerance;
  Eigen::VectorXd residual;
  Eigen::MatrixXd basis;
  Eigen::VectorXd work;
  std::vector<double> small_work;
  std::array<a_int, 11> parameters = {};
  std::array<a_int, 14> places = {};
  a_int request = 0;
  a_int status = 1; // the start vector is given

  [[nodiscard]] Vector vector_at(int place) { return {work.data() + places[static_cast<std::size_t>(place)] - 1, n}; }

  void step()
  {
    arpack::saupd(request, arpack::bmat::generalized, n, arpack::which::largest_magnitude, num_wanted, tolerance,
                  residual.data(), krylov_size, basis.data(), n, parameters.data(), places.data(), work.data(),
                  small_work.data(), static_cast<a_int>(small_work.size()), status);
  }
};

Process start(const Eigenproblem& problem, const EigenSettings& settings)
{
  constexpr a_int most_restarts = 300;
  constexpr a_int shift_invert = 3;
  const auto n = static_cast<a_int>(problem.K.rows());
  const auto rigid = static_cast<a_int>(problem.rigid.cols());
  Process process{.n = n,
                  .num_wanted = static_cast<a_int>(settings.num_modes) + (settings.deflate ? 0 : rigid),
                  .krylov_size = static_cast<a_int>(settings.krylov_size),
                  .tolerance = settings.tolerance,
                  .residual = Eigen::VectorXd::LinSpaced(n, -1.0, 1.0).array().cos() +
                              Eigen::VectorXd::LinSpaced(n, 0.0, 1000.0).array().sin(), // without symmetry
                  .basis = Eigen::MatrixXd(n, settings.krylov_size),
                  .work = Eigen::VectorXd(3 * n),
                  .small_work =
                      std::vector<double>(static_cast<std::size_t>(settings.krylov_size * (settings.krylov_size + 8)))};
  process.parameters[0] = 1; // exact shifts of the restarts
  process.parameters[2] = most_restarts;
  process.parameters[6] = shift_invert;
  if (settings.deflate)
    take_out_rigid(problem, process.residual);
  return process;
}

/// Eigenvectors and eigenvalues from the finished process.
EigenPairs extract(Process& process, double shift)
{
  EigenPairs pairs;
  pairs.values.resize(process.num_wanted);
  pairs.vectors.resize(process.n, process.num_wanted);
  std::vector<a_int> select(static_cast<std::size_t>(process.krylov_size));
  arpack::seupd(1, arpack::howmny::ritz_vectors, select.data(), pairs.values.data(), pairs.vectors.data(), process.n,
                shift, arpack::bmat::generalized, process.n, arpack::which::largest_magnitude, process.num_wanted,
                process.tolerance, process.residual.data(), process.krylov_size, process.basis.data(), process.n,
                process.parameters.data(), process.places.data(), process.work.data(), process.small_work.data(),
                static_cast<a_int>(process.small_work.size()), process.status);
  return pairs;
}

} // namespace

EigenPairs arpack_modes(const Eigenproblem& problem, const SparseCholesky& factor, const EigenSettings& settings)
{
  constexpr a_int first_solve = -1;
  constexpr a_int solve = 1;
  constexpr a_int product = 2;
  Process process = start(problem, settings);
  int num_solves = 0;
  Eigen::VectorXd right;
  for (process.step(); process.request == first_solve || process.request == solve || process.request == product;
       process.step())
  {
    Vector out = process.vector_at(1);
    if (process.request == product)
    {
      out.noalias() = problem.M_full * process.vector_at(0);
      continue;
    }
    if (process.request == first_solve)
      right.noalias() = problem.M_full * process.vector_at(0);
    else
      right = process.vector_at(2); // the product is there already
    factor.solve(right, out);
    if (settings.deflate)
      take_out_rigid(problem, out);
    ++num_solves;
  }
  if (process.status != 0)
    throw NumericalFailure(message("ARPACK stopped with status ", process.status));
  EigenPairs pairs = extract(process, problem.shift);
  pairs.num_solves = num_solves;
  return sorted_elastic(pairs, settings.num_modes);
}

} // namespace plate::benchmarks
