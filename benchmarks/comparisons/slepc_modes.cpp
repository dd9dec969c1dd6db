// SPDX-License-Identifier: MPL-2.0
#include "slepc_modes.h"

#include <plate/core/error.h>

#include <slepceps.h>

#include <optional>
#include <vector>

namespace plate::benchmarks
{
namespace
{

void check(PetscErrorCode error)
{
  if (error != 0)
    throw NumericalFailure(message("SLEPc stopped with error ", error));
}

/// Starts the library when it is first needed.
void need_slepc()
{
  struct Session
  {
    Session()
    {
      check(SlepcInitializeNoArguments());
      check(PetscPushErrorHandler(PetscIgnoreErrorHandler, nullptr)); // errors become exceptions
    }
    ~Session() { SlepcFinalize(); }
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;
  };
  static const Session session;
}

/// A matrix of PETSc on the numbers of ours, which outlive it.
Mat matrix_on(const FullMatrix& matrix)
{
  FullMatrix& values = const_cast<FullMatrix&>(matrix); // the interface is not const
  Mat out = nullptr;
  check(MatCreateSeqAIJWithArrays(PETSC_COMM_SELF, static_cast<PetscInt>(matrix.rows()),
                                  static_cast<PetscInt>(matrix.cols()), values.outerIndexPtr(), values.innerIndexPtr(),
                                  values.valuePtr(), &out));
  check(MatSetOption(out, MAT_SYMMETRIC, PETSC_TRUE));
  check(MatSetOption(out, MAT_SPD, PETSC_FALSE));
  return out;
}

PetscErrorCode apply_our_factor(PC pc, Vec b, Vec x)
{
  void* context = nullptr;
  PCShellGetContext(pc, &context);
  PetscInt n = 0;
  VecGetSize(b, &n);
  const PetscScalar* from = nullptr;
  PetscScalar* to = nullptr;
  VecGetArrayRead(b, &from);
  VecGetArray(x, &to);
  Eigen::Map<Eigen::VectorXd> out(to, n);
  static_cast<const SparseCholesky*>(context)->solve(Eigen::Map<const Eigen::VectorXd>(from, n), out);
  VecRestoreArray(x, &to);
  VecRestoreArrayRead(b, &from);
  return 0;
}

/// How the shifted matrix is solved with.
void set_factor(ST st, SlepcFactor factor, std::optional<SparseCholesky>& ours)
{
  KSP ksp = nullptr;
  PC pc = nullptr;
  check(STGetKSP(st, &ksp));
  check(KSPSetType(ksp, KSPPREONLY));
  check(KSPGetPC(ksp, &pc));
  if (factor == SlepcFactor::ours)
  {
    check(STSetMatMode(st, ST_MATMODE_SHELL));
    check(PCSetType(pc, PCSHELL));
    check(PCShellSetContext(pc, &*ours));
    check(PCShellSetApply(pc, apply_our_factor));
    return;
  }
  check(PCSetType(pc, PCCHOLESKY));
  check(PCFactorSetMatSolverType(pc, factor == SlepcFactor::cholmod ? MATSOLVERCHOLMOD : MATSOLVERMUMPS));
}

/// Takes out the rigid motions, which outlive the solver.
void set_deflation(EPS eps, const Eigenproblem& problem)
{
  std::vector<Vec> vectors;
  for (Eigen::Index k = 0; k < problem.rigid.cols(); ++k)
    check(VecCreateSeqWithArray(PETSC_COMM_SELF, 1, static_cast<PetscInt>(problem.rigid.rows()),
                                problem.rigid.col(k).data(), &vectors.emplace_back(nullptr)));
  check(EPSSetDeflationSpace(eps, static_cast<PetscInt>(vectors.size()), vectors.data()));
  for (Vec& vector : vectors)
    check(VecDestroy(&vector)); // the solver has its own references
}

EigenPairs extract(EPS eps, Eigen::Index n, int num_wanted)
{
  PetscInt num_converged = 0;
  check(EPSGetConverged(eps, &num_converged));
  if (num_converged < num_wanted)
    throw NumericalFailure(message("SLEPc found ", num_converged, " of ", num_wanted, " modes"));
  EigenPairs pairs;
  pairs.values.resize(num_wanted);
  pairs.vectors.resize(n, num_wanted);
  for (int mode = 0; mode < num_wanted; ++mode)
  {
    Vec vector = nullptr;
    check(VecCreateSeqWithArray(PETSC_COMM_SELF, 1, static_cast<PetscInt>(n), pairs.vectors.col(mode).data(), &vector));
    check(EPSGetEigenpair(eps, mode, &pairs.values(mode), nullptr, vector, nullptr));
    check(VecDestroy(&vector));
  }
  return pairs;
}

} // namespace

EigenPairs slepc_modes(const Eigenproblem& problem, SlepcFactor factor, const EigenSettings& settings)
{
  need_slepc();
  constexpr PetscInt most_restarts = 300;
  std::optional<SparseCholesky> ours;
  if (factor == SlepcFactor::ours)
    ours.emplace(factorise(problem));
  Mat K = matrix_on(problem.K_full);
  Mat M = matrix_on(problem.M_full);
  const int num_wanted = settings.num_modes + (settings.deflate ? 0 : static_cast<int>(problem.rigid.cols()));
  EPS eps = nullptr;
  ST st = nullptr;
  check(EPSCreate(PETSC_COMM_SELF, &eps));
  check(EPSSetOperators(eps, K, M));
  check(EPSSetProblemType(eps, EPS_GHEP));
  check(EPSSetType(eps, EPSKRYLOVSCHUR));
  check(EPSSetTarget(eps, problem.shift));
  check(EPSSetWhichEigenpairs(eps, EPS_TARGET_MAGNITUDE));
  check(EPSSetDimensions(eps, num_wanted, settings.krylov_size, PETSC_DEFAULT));
  check(EPSSetTolerances(eps, settings.tolerance, most_restarts));
  check(EPSGetST(eps, &st));
  check(STSetType(st, STSINVERT));
  set_factor(st, factor, ours);
  if (settings.deflate)
    set_deflation(eps, problem);
  check(EPSSolve(eps));
  EigenPairs pairs = extract(eps, problem.K.rows(), num_wanted);
  KSP ksp = nullptr;
  PetscInt num_solves = 0;
  check(STGetKSP(st, &ksp));
  check(KSPGetTotalIterations(ksp, &num_solves));
  pairs.num_solves = static_cast<int>(num_solves);
  check(EPSDestroy(&eps));
  check(MatDestroy(&K));
  check(MatDestroy(&M));
  return sorted_elastic(pairs, settings.num_modes);
}

} // namespace plate::benchmarks
