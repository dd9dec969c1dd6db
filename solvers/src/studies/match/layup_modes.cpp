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

constexpr int num_spare = 4;  // further modes of a snapshot, so that one that falls from above is known too
constexpr double drop = 1e-2; // parts of snapshots left out, of their energy norm: an eigenvalue errs by its square

/// The lower triangle whose columns follow one another in a vector.
Eigen::MatrixXd unpacked(const Eigen::VectorXd& columns, Eigen::Index size)
{
  Eigen::MatrixXd out(size, size);
  for (Eigen::Index j = 0, at = 0; j < size; at += size - j, ++j)
    out.col(j).tail(size - j) = columns.segment(at, size - j);
  return out;
}

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

LayupModes::LayupModes(Model start, std::span<const Laminate> laminates, int num_modes)
    : start_(with_laminate(std::move(start), laminates.front())),
      covers_(reduced::without_torsion(triangle_covers(start_))),
      plain_(assemble(reduced::without_point_masses(start_))),
      shift_(std::pow(two_pi * plain_.typical_frequency_hz, 2)), num_modes_(num_modes), reader_(start_, covers_),
      energy_(reduced::energy_matrix(plain_, shift_)), basis_(plain_.dofs.num_equations, 0)
{
  std::vector<SectionNumbers> samples;
  for (const Laminate& laminate : laminates)
    samples.push_back(reader_.numbers(laminate));
  const SectionNumbers units = section_units(reader_, start_, laminates);
  combine_stiffness_ = std::make_unique<SectionCombination>(combination(samples, units, &SectionNumbers::stiffness));
  combine_mass_ = std::make_unique<SectionCombination>(combination(samples, units, &SectionNumbers::mass));
  for (const Eigen::Index term : combine_stiffness_->terms())
    stiffness_.push_back({.laminate = laminates[static_cast<std::size_t>(term)], .projected = {}});
  for (const Eigen::Index term : combine_mass_->terms())
    mass_.push_back({.laminate = laminates[static_cast<std::size_t>(term)], .projected = {}});
  if (!start_.bars.empty())
    strip_ = std::make_unique<BarStrip>(start_, laminates);
  if (plain_.rigid_motions.cols() > 0)
    extend(plain_.rigid_motions);
}

Model LayupModes::model(const Laminate& laminate) const
{
  return with_laminate(start_, laminate);
}

FullModes LayupModes::full(const Model& plate)
{
  const System system = assembler_.assemble(plate);
  ModalResult modal = solve_modes(solver_, plate, system, {.num_modes = num_modes_ + num_spare});
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
  const Vectors added = reduced::new_vectors(basis_, energy_, shapes, basis_.cols() == 0 ? 0.0 : drop);
  basis_.conservativeResize(Eigen::NoChange, basis_.cols() + added.cols());
  basis_.rightCols(added.cols()) = added;
  const auto extend_all = [&](Form form, std::vector<Term>& terms)
  {
    in_parallel(terms.size(), num_threads(),
                [&](std::size_t from, std::size_t to)
                {
                  for (std::size_t i = from; i < to; ++i)
                    reduced::extend_projection(
                        basis_, reduced::apply(form, model(terms[i].laminate), covers_, plain_.dofs, added),
                        terms[i].projected);
                });
  };
  extend_all(Form::stiffness, stiffness_);
  extend_all(Form::mass, mass_);
  torsion_.clear();
  if (strip_)
    for (const Vectors& product : strip_->terms(covers_, plain_.dofs, basis_))
      torsion_.emplace_back(basis_.transpose() * product);
  extend_air();
  pack();
}

/// What moves with the plate and does not depend on its laminate.
void LayupModes::extend_air()
{
  added_mass_ = Eigen::MatrixXd::Zero(basis_.cols(), basis_.cols());
  if (!start_.masses.empty())
  {
    const SparseMatrix lower = assemble(start_).M - plain_.M;
    const reduced::EnergyMatrix whole = SparseMatrix(lower.selfadjointView<Eigen::Lower>());
    added_mass_ += basis_.transpose() * (whole * basis_);
  }
  if (start_.air_density > 0.0)
    added_mass_ += air_mass(start_.mesh, normal_displacements(start_.mesh, plain_.dofs, basis_), start_.air_density);
}

void LayupModes::pack()
{
  const Eigen::Index r = basis_.cols();
  const auto pack_column = [r](const Eigen::MatrixXd& matrix, Eigen::Ref<Eigen::VectorXd> out)
  {
    for (Eigen::Index j = 0, at = 0; j < r; at += r - j, ++j)
      out.segment(at, r - j) = matrix.col(j).tail(r - j);
  };
  packed_stiffness_.resize(r * (r + 1) / 2, static_cast<Eigen::Index>(stiffness_.size() + torsion_.size()));
  packed_mass_.resize(r * (r + 1) / 2, static_cast<Eigen::Index>(mass_.size()) + 1);
  Eigen::Index column = 0;
  for (const Term& term : stiffness_)
    pack_column(term.projected, packed_stiffness_.col(column++));
  for (const Eigen::MatrixXd& term : torsion_)
    pack_column(term, packed_stiffness_.col(column++));
  column = 0;
  for (const Term& term : mass_)
    pack_column(term.projected, packed_mass_.col(column++));
  pack_column(added_mass_, packed_mass_.col(column));
}

QuickModes LayupModes::quick(const Laminate& laminate) const
{
  const SectionNumbers numbers = reader_.numbers(laminate);
  Eigen::VectorXd k(packed_stiffness_.cols());
  k.head(static_cast<Eigen::Index>(stiffness_.size())) = combine_stiffness_->coefficients(numbers.stiffness);
  if (strip_)
    k.tail(static_cast<Eigen::Index>(torsion_.size())) = strip_->coefficients(laminate);
  Eigen::VectorXd m(packed_mass_.cols());
  m << combine_mass_->coefficients(numbers.mass), 1.0;
  const Eigen::MatrixXd K = unpacked(packed_stiffness_ * k, basis_.cols());
  const Eigen::MatrixXd M = unpacked(packed_mass_ * m, basis_.cols());
  reduced::SmallModes modes = reduced::small_modes(K, M, plain_.rigid_motions.cols(), num_modes_);
  return {.frequencies_hz = modes.eigenvalues.cwiseSqrt() / two_pi, .shares = std::move(modes.vectors)};
}

} // namespace plate::match
