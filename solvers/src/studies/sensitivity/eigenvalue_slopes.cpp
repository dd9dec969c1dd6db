// SPDX-License-Identifier: MPL-2.0
#include "eigenvalue_slopes.h"

#include <plate/core/units.h>
#include <plate/post/mode_pairs.h>

#include <Eigen/Eigenvalues>

#include <algorithm>

namespace plate::sensitivity
{

namespace
{

/// Nearer than this modes count as repeated [-]: rounding and an uneven mesh split modes that coincide by up to that
/// much, and any change in a workshop is greater.
constexpr double repeated_within = 1e-5;

/// Runs of two or more modes, each within a part of the frequency before it.
std::vector<CloseModes> runs(const Eigen::VectorXd& hz, Eigen::Index num_modes, double within)
{
  std::vector<CloseModes> out;
  for (Eigen::Index first = 0; first < num_modes;)
  {
    Eigen::Index end = first + 1;
    while (end < num_modes && hz(end) <= hz(end - 1) * (1.0 + within))
      ++end;
    if (end - first > 1)
      out.push_back({.first = static_cast<int>(first), .count = static_cast<int>(end - first), .repeated = false});
    first = end;
  }
  return out;
}

} // namespace

EigenvalueSlopes::EigenvalueSlopes(const Eigen::VectorXd& frequencies_hz)
    : frequencies_hz_(frequencies_hz), repeated_(runs(frequencies_hz, frequencies_hz.size(), repeated_within))
{
  for (Eigen::Index i = 0; i < frequencies_hz.size(); ++i)
    pairs_.push_back({i, i});
  for (const CloseModes& run : repeated_)
    for (Eigen::Index i = run.first; i < run.first + run.count; ++i)
      for (Eigen::Index j = run.first; j < i; ++j)
        pairs_.push_back({i, j});
}

Eigen::VectorXd EigenvalueSlopes::branches(const Eigen::VectorXd& stiffness, const Eigen::VectorXd& mass) const
{
  const Eigen::Index n = frequencies_hz_.size();
  Eigen::VectorXd omega = two_pi * frequencies_hz_;
  for (const CloseModes& run : repeated_)
    omega.segment(run.first, run.count).setConstant(omega.segment(run.first, run.count).mean());
  const auto slope_of = [&](Eigen::Index pair)
  {
    const double w = omega(pairs_[static_cast<std::size_t>(pair)].first);
    return (stiffness(pair) - w * w * mass(pair)) / (2.0 * w * two_pi);
  };
  Eigen::VectorXd slopes(n);
  for (Eigen::Index i = 0; i < n; ++i)
    slopes(i) = slope_of(i);
  Eigen::Index pair = n;
  for (const CloseModes& run : repeated_)
  {
    Eigen::MatrixXd projected = slopes.segment(run.first, run.count).asDiagonal();
    for (Eigen::Index i = 0; i < run.count; ++i)
      for (Eigen::Index j = 0; j < i; ++j)
        projected(i, j) = slope_of(pair++);
    slopes.segment(run.first, run.count) =
        Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(projected, Eigen::EigenvaluesOnly).eigenvalues();
  }
  return slopes;
}

Eigen::VectorXd EigenvalueSlopes::means(const Eigen::VectorXd& stiffness, const Eigen::VectorXd& mass) const
{
  Eigen::VectorXd slopes = branches(stiffness, mass); // the sum of eigenvalues is the trace, which is linear
  for (const CloseModes& run : repeated_)
    slopes.segment(run.first, run.count).setConstant(slopes.segment(run.first, run.count).mean());
  return slopes;
}

std::vector<CloseModes> EigenvalueSlopes::close_modes(int num_modes) const
{
  std::vector<CloseModes> out = runs(frequencies_hz_, num_modes, repeated_within);
  for (CloseModes& run : out)
    run.repeated = true;
  const auto is_known = [&](const CloseModes& near)
  {
    return std::any_of(out.begin(), out.end(),
                       [&](const CloseModes& run) { return run.first == near.first && run.count == near.count; });
  };
  for (const CloseModes& near : runs(frequencies_hz_, num_modes, PairingOptions().closeness))
    if (!is_known(near))
      out.push_back(near);
  return out;
}

} // namespace plate::sensitivity
