// SPDX-License-Identifier: MPL-2.0
#include "mode_targets.h"

#include <plate/core/error.h>
#include <plate/post/mode_loss.h>
#include <plate/post/mode_pairs.h>
#include <plate/solvers/air_modes.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace plate::match
{

ModeTargets::ModeTargets(const MatchGoal& goal) : goal_(goal)
{
  if (goal.targets.empty() || goal.guide_hz.size() != goal.guide.displacement.cols())
    throw InvalidInput(message("match: needs at least one target and a frequency for each mode of the guide; got ",
                               goal.targets.size(), " targets, ", goal.guide_hz.size(), " frequencies for ",
                               goal.guide.displacement.cols(), " modes"));
  for (const TargetMode& target : goal.targets)
    if (target.guide < 0 || target.guide >= goal.guide_hz.size() || !(target.frequency_hz > 0.0))
      throw InvalidInput(message("match: target ", target.name, ": guide ", target.guide, " of ", goal.guide_hz.size(),
                                 ", frequency ", target.frequency_hz,
                                 " Hz; the guide must be one of its modes and the frequency positive"));
    else if (goal.loss && !(target.loss.value_or(0.0) > 0.0))
      throw InvalidInput(message("match: target ", target.name, " of ", target.frequency_hz, " Hz has the loss ",
                                 target.loss.value_or(0.0), "; where losses are wanted it must be positive"));
}

int ModeTargets::num_modes() const
{
  const auto count = static_cast<int>(goal_.guide_hz.size());
  return count + std::max(4, count / 2); // as far as modes have been seen to move between laminates
}

void ModeTargets::prepare(const LayupModes& modes, const Model& model)
{
  basis_ = products(model, modes.dofs(), modes.basis());
}

FoundModes ModeTargets::find(const ShapeProducts& products, const Eigen::VectorXd& frequencies_hz,
                             const Eigen::VectorXd& losses) const
{
  const ModePairing pairing = pair_by_shape(products, goal_.guide_hz, frequencies_hz);
  const auto count = goal_.targets.size();
  const Eigen::VectorXd nothing =
      Eigen::VectorXd::Constant(static_cast<Eigen::Index>(count), std::numeric_limits<double>::quiet_NaN());
  FoundModes out{.mode = std::vector<int>(count, -1),
                 .assurance = std::vector<double>(count, 0.0),
                 .frequencies_hz = nothing,
                 .loss = nothing};
  for (std::size_t t = 0; t < count; ++t)
    for (const ShapePair& pair : pairing.pairs)
      if (pair.reference == goal_.targets[t].guide)
      {
        out.mode[t] = pair.other;
        out.assurance[t] = pair.group_assurance;
        out.frequencies_hz(static_cast<Eigen::Index>(t)) = frequencies_hz(pair.other);
        if (losses.size() > 0)
          out.loss(static_cast<Eigen::Index>(t)) = losses(pair.other);
      }
  return out;
}

FoundModes ModeTargets::find(const QuickModes& modes) const
{
  return find(basis_, modes);
}

FoundModes ModeTargets::find(const ShapeProducts& basis, const QuickModes& modes) const
{
  const ShapeProducts products = {.reference = basis.reference,
                                  .cross = basis.cross * modes.shares,
                                  .other = modes.shares.transpose() * (basis.other * modes.shares),
                                  .share_left_out = basis.share_left_out};
  return find(products, modes.frequencies_hz, modes.losses);
}

ShapeProducts ModeTargets::products(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& vectors) const
{
  return shape_products(goal_.guide, mode_shapes(model.mesh, dofs, vectors));
}

FoundModes ModeTargets::find(const Model& model, const DofMap& dofs, const ModalResult& modal, Losses losses) const
{
  return find(products(model, dofs, modal.shapes), modal.frequencies_hz,
              losses == Losses::computed ? mode_losses(model, dofs, modal.shapes) : Eigen::VectorXd());
}

SolvedTargets ModeTargets::solve(const Model& model, Losses losses) const
{
  const System system = assemble(model);
  const ModalResult modal = solve_modes(model, system, {.num_modes = num_modes()});
  if (modal.status != Status::converged)
    throw NumericalFailure(message("match: the modes did not converge; ", modal.summary()));
  return {.found = find(model, system.dofs, modal, losses), .mass = system.mass};
}

Eigen::VectorXd ModeTargets::cents(const Eigen::VectorXd& frequencies_hz) const
{
  Eigen::VectorXd out(frequencies_hz.size());
  for (Eigen::Index t = 0; t < out.size(); ++t)
    out(t) = 1200.0 * std::log2(frequencies_hz(t) / goal_.targets[static_cast<std::size_t>(t)].frequency_hz);
  return out;
}

void ModeTargets::describe(const FoundModes& found, const Eigen::VectorXd& reduced_hz, MatchCandidate& candidate) const
{
  const Eigen::VectorXd differences = cents(found.frequencies_hz);
  candidate.mismatch = mismatch_as_is(found.frequencies_hz);
  const Eigen::VectorXd found_values = values(found);
  candidate.score = std::hypot(candidate.mismatch, unlikeness(found_values), loss_miss(found_values));
  candidate.modes.clear();
  candidate.lost.clear();
  for (std::size_t t = 0; t < found.mode.size(); ++t)
    if (const auto at = static_cast<Eigen::Index>(t); found.mode[t] < 0)
      candidate.lost.push_back(t);
    else
      candidate.modes.push_back({.target = t,
                                 .mode = found.mode[t],
                                 .frequency_hz = found.frequencies_hz(at),
                                 .reduced_hz = reduced_hz(at),
                                 .cents = differences(at),
                                 .assurance = found.assurance[t],
                                 .loss = found.loss(at)});
}

Eigen::VectorXd ModeTargets::values(const FoundModes& found) const
{
  const Eigen::Index count = found.frequencies_hz.size();
  Eigen::VectorXd out(count + (goal_.likeness > 0.0 ? count : 0) + (goal_.loss ? count : 0));
  out.head(count) = found.frequencies_hz.array().log();
  for (Eigen::Index t = 0; t < count; ++t)
  {
    const auto target = static_cast<std::size_t>(t);
    if (goal_.likeness > 0.0)
      out(count + t) = std::isnan(out(t)) ? out(t) : found.assurance[target];
    if (goal_.loss)
      out(out.size() - count + t) = std::log(found.loss(t) / *goal_.targets[target].loss);
  }
  return out;
}

/// What is missing of the likeness wanted, root of the mean square [cents]; lost targets are counted elsewhere.
double ModeTargets::unlikeness(const Eigen::VectorXd& values) const
{
  if (goal_.likeness == 0.0)
    return 0.0;
  const auto count = static_cast<Eigen::Index>(goal_.targets.size());
  double sum = 0.0;
  for (const double assurance : values.segment(count, count))
    if (!std::isnan(assurance))
      sum += std::pow(std::max(goal_.likeness - assurance, 0.0), 2);
  return unlike_cents * std::sqrt(sum / static_cast<double>(count));
}

/// By what losses are further off than allowed, root of the mean square [cents]; lost targets are counted elsewhere.
double ModeTargets::loss_miss(const Eigen::VectorXd& values) const
{
  if (!goal_.loss)
    return 0.0;
  const auto count = static_cast<Eigen::Index>(goal_.targets.size());
  double sum = 0.0;
  for (const double ratio : values.tail(count))
    if (!std::isnan(ratio))
      sum += std::pow(std::max(std::abs(std::exp(ratio) - 1.0) - *goal_.loss, 0.0), 2);
  return off_loss_cents * std::sqrt(sum / static_cast<double>(count));
}

double ModeTargets::shifted_score(const Eigen::VectorXd& values, const Eigen::VectorXd& shift) const
{
  return std::hypot(mismatch_as_is((values.head(shift.size()) + shift).array().exp()), unlikeness(values),
                    loss_miss(values));
}

double ModeTargets::score(const Eigen::VectorXd& values) const
{
  double least = shifted_score(values, Eigen::VectorXd::Zero(static_cast<Eigen::Index>(goal_.targets.size())));
  for (Eigen::Index i = 0; i < shifts_.cols(); ++i)
    least = std::min(least, shifted_score(values, shifts_.col(i)));
  return least;
}

double ModeTargets::mismatch_as_is(const Eigen::VectorXd& frequencies_hz) const
{
  const Eigen::VectorXd differences = cents(frequencies_hz);
  double sum = 0.0;
  for (const double difference : differences)
    sum += std::pow(std::isnan(difference) ? lost_cents : difference, 2);
  return std::sqrt(sum / static_cast<double>(differences.size()));
}

} // namespace plate::match
