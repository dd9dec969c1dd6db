// SPDX-License-Identifier: MPL-2.0
#include "smoothing.h"

#include <plate/core/error.h>

#include <Eigen/SparseCholesky>

#include <cmath>
#include <numbers>
#include <random>

namespace plate
{

namespace
{

constexpr double lightest = -9.0;         // decimal logarithm of the weight, times tr R / tr B^T B
constexpr double longest_wave = 100.0;    // that the heaviest weight smooths away, over the interval of the splines
constexpr double coarse_step = 1.4;       // of the first search
constexpr double trace_factor = 1.4;      // [KimGu2004], for what the penalty can change
constexpr double least_freedom = 0.02;    // over the number of values; less would be rounding
constexpr Eigen::Index num_probes = 12;   // the error of the trace is then a few percent of its own square root
constexpr Eigen::Index exact_up_to = 200; // coefficients

// Columns w with tr(B^T B X) = sum w^T X w: exactly, or on average over signs.
Eigen::MatrixXd trace_probes(const SmoothingProblem& problem)
{
  const Eigen::Index n = problem.basis.rows();
  if (problem.basis.cols() <= exact_up_to && n <= 4 * exact_up_to)
    return Eigen::MatrixXd(problem.basis.transpose());
  std::mt19937 random(1);
  Eigen::MatrixXd signs(n, num_probes);
  for (Eigen::Index j = 0; j < num_probes; ++j)
    for (Eigen::Index i = 0; i < n; ++i)
      signs(i, j) = (random() & 1U) != 0U ? 1.0 : -1.0;
  return problem.basis.transpose() * signs / std::sqrt(static_cast<double>(num_probes));
}

// Solves for one weight after another; the pattern is analysed once.
class Smoother
{
public:
  explicit Smoother(const SmoothingProblem& problem)
      : problem_(problem), normal_(problem.basis.transpose() * problem.basis),
        right_(problem.basis.transpose() * problem.values), probes_(trace_probes(problem))
  {
    const double stiffness = problem.roughness.diagonal().sum();
    scale_ = stiffness > 0.0 ? normal_.diagonal().sum() / stiffness : 0.0;
    factor_.analyzePattern(normal_ + problem.roughness);
    unpenalised_ = solve(heaviest());
  }

  // Decimal logarithm of the heaviest weight: a wave number k over the interval h counts (kh)^(2 order) in the penalty.
  [[nodiscard]] double heaviest() const
  {
    return 2.0 * problem_.order * std::log10(longest_wave / (2.0 * std::numbers::pi));
  }

  // Cross-validation score for a weight; the coefficients are kept.
  double score(double log_weight)
  {
    const double trace = solve(log_weight);
    const auto n = static_cast<double>(problem_.basis.rows());
    const double freedom = n - unpenalised_ - trace_factor * (trace - unpenalised_);
    if (!(freedom > least_freedom * n))
      return HUGE_VAL;
    return n * (problem_.basis * coefficients_ - problem_.values).squaredNorm() / (freedom * freedom);
  }

  // Coefficients for a weight; returns the trace of the influence matrix.
  double solve(double log_weight)
  {
    const Eigen::SparseMatrix<double> A = normal_ + std::pow(10.0, log_weight) * scale_ * problem_.roughness;
    factor_.factorize(A);
    if (factor_.info() != Eigen::Success)
      throw NumericalFailure(message("smooth fit: the equations for ", A.rows(), " coefficients are singular"));
    coefficients_ = factor_.solve(right_);
    return probes_.cwiseProduct(factor_.solve(probes_)).sum();
  }

  [[nodiscard]] const Eigen::MatrixXd& coefficients() const { return coefficients_; }

private:
  const SmoothingProblem& problem_;
  Eigen::SparseMatrix<double> normal_;
  Eigen::MatrixXd right_;
  Eigen::MatrixXd probes_;
  double scale_ = 0.0;       // makes the weight a pure number [m^-2 or the like]
  double unpenalised_ = 0.0; // trace that no weight takes away
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor_;
  Eigen::MatrixXd coefficients_;
};

} // namespace

SmoothingResult solve_smoothing(const SmoothingProblem& problem)
{
  Smoother smoother(problem);
  double best = smoother.heaviest();
  double least = HUGE_VAL;
  const auto visit = [&](double log_weight)
  {
    const double score = smoother.score(log_weight);
    if (score < least)
    {
      least = score;
      best = log_weight;
    }
  };
  for (double log_weight = smoother.heaviest(); log_weight >= lightest; log_weight -= coarse_step)
    visit(log_weight);
  for (double step = 0.5 * coarse_step; step > 0.3; step *= 0.5)
  {
    const double middle = best;
    visit(middle - step);
    visit(middle + step);
  }
  static_cast<void>(smoother.solve(best));
  return {.coefficients = smoother.coefficients(), .score = least};
}

} // namespace plate
