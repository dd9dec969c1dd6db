// SPDX-License-Identifier: MPL-2.0
#include "layup_modes.h"

#include <plate/core/error.h>
#include <plate/core/parallel.h>
#include <plate/core/threads.h>
#include <plate/core/units.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/air_mass.h>
#include <plate/solvers/air_modes.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate::match
{

using reduced::Form;
using reduced::Vectors;

namespace
{

constexpr double drop = 1e-2; // parts of snapshots left out, of their energy norm: an eigenvalue errs by its square

/// Chooses laminates that all others are combined of.
SectionCombination combination(const std::vector<SectionNumbers>& samples, const SectionNumbers& units,
                               Eigen::VectorXd SectionNumbers::*part)
{
  Eigen::MatrixXd numbers((samples.front().*part).size(), static_cast<Eigen::Index>(samples.size()));
  for (std::size_t i = 0; i < samples.size(); ++i)
    numbers.col(static_cast<Eigen::Index>(i)) = samples[i].*part;
  return {numbers, units.*part};
}

} // namespace

Model with_laminate(Model model, const Laminate& laminate)
{
  model.material.laminate = laminate;
  std::fill(model.mesh.thickness.begin(), model.mesh.thickness.end(), total_thickness(laminate));
  model.mesh.thickness_bubbles.clear();
  model.directions.clear(); // they belong to the plies that were there
  return model;
}

LayupModes::LayupModes(Model start, std::vector<Laminate> laminates, int num_modes, Losses losses)
    : start_(with_laminate(std::move(start), laminates.front())),
      covers_(reduced::without_torsion(triangle_covers(start_))),
      plain_(assemble(reduced::without_point_masses(start_))),
      shift_(std::pow(two_pi * plain_.typical_frequency_hz, 2)), num_modes_(num_modes), reader_(start_, covers_),
      energy_(reduced::energy_matrix(plain_, shift_)), basis_(plain_.dofs.num_equations, 0)
{
  if (losses == Losses::computed)
  {
    losses_ = std::make_unique<LayupLosses>(start_, covers_);
    const std::vector<Laminate> further = LayupLosses::further_samples(laminates);
    laminates.insert(laminates.end(), further.begin(), further.end());
  }
  std::vector<SectionNumbers> samples;
  for (const Laminate& laminate : laminates)
    samples.push_back(reader_.numbers(laminate));
  const SectionNumbers units = section_units(reader_, start_, laminates);
  combine_stiffness_ = std::make_unique<SectionCombination>(combination(samples, units, &SectionNumbers::stiffness));
  combine_mass_ = std::make_unique<SectionCombination>(combination(samples, units, &SectionNumbers::mass));
  for (const Eigen::Index term : combine_stiffness_->terms())
    stiffness_of_.push_back(laminates[static_cast<std::size_t>(term)]);
  for (const Eigen::Index term : combine_mass_->terms())
    mass_of_.push_back(laminates[static_cast<std::size_t>(term)]);
  if (!start_.bars.empty())
    strip_ = std::make_unique<BarStrip>(start_, laminates);
  stiffness_.resize(stiffness_of_.size() + (strip_ ? strip_->num_terms() : 0));
  mass_.resize(mass_of_.size() + 1);
  if (plain_.rigid_motions.cols() > 0)
    basis_ = reduced::new_vectors(basis_, energy_, plain_.rigid_motions, 0.0);
}

Model LayupModes::model(const Laminate& laminate) const
{
  return with_laminate(start_, laminate);
}

FullModes LayupModes::full(const Model& plate)
{
  const System system = assembler_.assemble(plate);
  ModalResult modal = solve_modes(solver_, plate, system, {.num_modes = num_modes_});
  if (modal.status != Status::converged)
    throw NumericalFailure(message("match: the modes did not converge; ", modal.summary()));
  ++num_full_;
  return {.modal = std::move(modal), .mass = system.mass};
}

void LayupModes::learn(std::span<const Laminate> laminates)
{
  Eigen::MatrixXd shapes(plain_.dofs.num_equations, 0);
  for (const Laminate& laminate : laminates)
  {
    const Eigen::MatrixXd added = full(model(laminate)).modal.shapes;
    shapes.conservativeResize(Eigen::NoChange, shapes.cols() + added.cols());
    shapes.rightCols(added.cols()) = added;
  }
  extend(shapes);
}

void LayupModes::extend(const Eigen::MatrixXd& shapes)
{
  const Vectors learned = reduced::new_vectors(basis_, energy_, shapes, drop);
  basis_.conservativeResize(Eigen::NoChange, basis_.cols() + learned.cols());
  basis_.rightCols(learned.cols()) = learned;
  const Vectors added = basis_.rightCols(basis_.cols() - stiffness_.front().cols()); // at first the rigid motions too
  const auto extend_all = [&](Form form, const std::vector<Laminate>& laminates, std::vector<Eigen::MatrixXd>& terms)
  {
    in_parallel(laminates.size(), num_threads(),
                [&](std::size_t from, std::size_t to)
                {
                  for (std::size_t i = from; i < to; ++i)
                    reduced::extend_projection(
                        basis_, reduced::apply(form, model(laminates[i]), covers_, plain_.dofs, added), terms[i]);
                });
  };
  extend_all(Form::stiffness, stiffness_of_, stiffness_);
  extend_all(Form::mass, mass_of_, mass_);
  if (strip_)
  {
    std::size_t term = stiffness_of_.size();
    for (const Vectors& product : strip_->terms(covers_, plain_.dofs, added))
      reduced::extend_projection(basis_, product, stiffness_[term++]);
  }
  if (losses_)
    losses_->extend(stiffness_of_, plain_.dofs, basis_, added);
  extend_air();
  packed_stiffness_ = PackedTerms(stiffness_);
  packed_mass_ = PackedTerms(mass_);
}

/// What moves with the plate and does not depend on its laminate.
void LayupModes::extend_air()
{
  Eigen::MatrixXd& added_mass = mass_.back();
  added_mass = Eigen::MatrixXd::Zero(basis_.cols(), basis_.cols());
  if (!start_.masses.empty())
  {
    const SparseMatrix lower = assemble(start_).M - plain_.M;
    const reduced::EnergyMatrix whole = SparseMatrix(lower.selfadjointView<Eigen::Lower>());
    added_mass += basis_.transpose() * (whole * basis_);
  }
  if (start_.air_density > 0.0)
    added_mass += air_mass(start_.mesh, normal_displacements(start_.mesh, plain_.dofs, basis_), start_.air_density);
}

/// Dissipated over stored energy of the modes, whose modal mass is one.
Eigen::VectorXd LayupModes::losses(const Laminate& laminate, const Eigen::VectorXd& stiffness_factors,
                                   const reduced::SmallModes& modes) const
{
  const auto num_laminates = static_cast<Eigen::Index>(stiffness_of_.size());
  Eigen::VectorXd factors = stiffness_factors;
  factors.head(num_laminates) = combine_stiffness_->coefficients(LayupLosses::numbers(reader_, laminate));
  if (strip_)
    factors.tail(factors.size() - num_laminates) = strip_->dissipation(laminate);
  Eigen::MatrixXd dissipation = packed_stiffness_.combined(factors);
  if (losses_->has_parts())
    dissipation.triangularView<Eigen::Lower>() += losses_->of_parts(stiffness_factors.head(num_laminates));
  const Eigen::MatrixXd products = dissipation.selfadjointView<Eigen::Lower>() * modes.vectors;
  return modes.vectors.cwiseProduct(products).colwise().sum().transpose().cwiseQuotient(modes.eigenvalues);
}

QuickModes LayupModes::quick(const Laminate& laminate) const
{
  const SectionNumbers numbers = reader_.numbers(laminate);
  Eigen::VectorXd k(static_cast<Eigen::Index>(stiffness_.size()));
  k.head(static_cast<Eigen::Index>(stiffness_of_.size())) = combine_stiffness_->coefficients(numbers.stiffness);
  if (strip_)
    k.tail(static_cast<Eigen::Index>(strip_->num_terms())) = strip_->coefficients(laminate);
  Eigen::VectorXd m(static_cast<Eigen::Index>(mass_.size()));
  m << combine_mass_->coefficients(numbers.mass), 1.0;
  reduced::SmallModes modes = reduced::small_modes(packed_stiffness_.combined(k), packed_mass_.combined(m),
                                                   plain_.rigid_motions.cols(), num_modes_);
  QuickModes out{.frequencies_hz = modes.eigenvalues.cwiseSqrt() / two_pi, .shares = {}, .losses = {}};
  if (losses_)
    out.losses = losses(laminate, k, modes);
  out.shares = std::move(modes.vectors);
  return out;
}

} // namespace plate::match
