// SPDX-License-Identifier: MPL-2.0
#include "layup_modes.h"

#include <plate/core/error.h>
#include <plate/core/parallel.h>
#include <plate/core/threads.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/air_mass.h>
#include <plate/solvers/air_modes.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace plate::match
{

using reduced::Form;
using reduced::Vectors;

namespace
{

constexpr double two_pi = 2.0 * std::numbers::pi;
constexpr int num_spare = 4;     // further modes of a snapshot, so that one that falls from above is known too
constexpr double drop = 1e-2;    // parts of snapshots left out, of their energy norm: an eigenvalue errs by its square

Model with_laminate(Model model, const Laminate& laminate)
{
  model.material.laminate = laminate;
  std::fill(model.mesh.thickness.begin(), model.mesh.thickness.end(), total_thickness(laminate));
  model.mesh.thickness_bubbles.clear();
  model.directions.clear(); // they belong to the plies that were there
  return model;
}

Model without_point_masses(Model model)
{
  model.masses.clear();
  return model;
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

LayupModes::LayupModes(Model start, std::span<const Laminate> laminates, int num_modes)
    : start_(with_laminate(std::move(start), laminates.front())),
      covers_(reduced::without_torsion(triangle_covers(start_))), plain_(assemble(without_point_masses(start_))),
      shift_(std::pow(two_pi * plain_.typical_frequency_hz, 2)), num_modes_(num_modes), reader_(start_, covers_),
      energy_(reduced::energy_matrix(plain_, shift_)), basis_(plain_.dofs.num_equations, 0)
{
  std::vector<SectionNumbers> samples;
  for (const Laminate& laminate : laminates)
    samples.push_back(reader_.numbers(laminate));
  const SectionNumbers units = section_units(reader_, start_, laminates);
  combine_stiffness_ =
      std::make_unique<SectionCombination>(combination(samples, units, &SectionNumbers::stiffness));
  combine_mass_ = std::make_unique<SectionCombination>(combination(samples, units, &SectionNumbers::mass));
  for (const Eigen::Index term : combine_stiffness_->terms())
    stiffness_.push_back({.laminate = laminates[static_cast<std::size_t>(term)], .projected = {}});
  for (const Eigen::Index term : combine_mass_->terms())
    mass_.push_back({.laminate = laminates[static_cast<std::size_t>(term)], .projected = {}});
  for (Term& term : mass_)
    term.mass = assembler_.assemble(model(term.laminate)).mass;
  if (!start_.bars.empty())
    strip_ = std::make_unique<BarStrip>(start_, laminates);
  if (plain_.rigid_motions.cols() > 0)
    extend(plain_.rigid_motions);
}

Model LayupModes::model(const Laminate& laminate) const
{
  return with_laminate(start_, laminate);
}

FullModes LayupModes::full(const Laminate& laminate)
{
  const Model whole = model(laminate);
  const System system = assembler_.assemble(whole);
  ModalResult modal = solve_modes(solver_, whole, system, {.num_modes = num_modes_ + num_spare});
  if (modal.status != Status::converged)
    throw NumericalFailure(message("match: the modes did not converge; ", modal.summary()));
  ++num_full_;
  return {.modal = std::move(modal), .mass = system.mass};
}

std::vector<FullModes> LayupModes::learn(std::span<const Laminate> laminates)
{
  std::vector<FullModes> out;
  Eigen::MatrixXd shapes(plain_.dofs.num_equations, 0);
  for (const Laminate& laminate : laminates)
  {
    out.push_back(full(laminate));
    const Eigen::MatrixXd& added = out.back().modal.shapes;
    shapes.conservativeResize(Eigen::NoChange, shapes.cols() + added.cols());
    shapes.rightCols(added.cols()) = added;
  }
  extend(shapes);
  return out;
}

void LayupModes::extend(const Eigen::MatrixXd& shapes)
{
  const Vectors added = reduced::new_vectors(basis_, energy_, shapes, basis_.cols() == 0 ? 0.0 : drop);
  const Eigen::Index old_size = basis_.cols();
  basis_.conservativeResize(Eigen::NoChange, old_size + added.cols());
  basis_.rightCols(added.cols()) = added;
  const auto extend_all = [&](Form form, std::vector<Term>& terms)
  {
    in_parallel(terms.size(), num_threads(),
                [&](std::size_t from, std::size_t to)
                {
                  for (std::size_t i = from; i < to; ++i)
                    extend_term(form, model(terms[i].laminate), terms[i], old_size, added);
                });
  };
  extend_all(Form::stiffness, stiffness_);
  extend_all(Form::mass, mass_);
  torsion_.clear();
  if (strip_)
    for (const Vectors& product : strip_->terms(covers_, plain_.dofs, basis_))
      torsion_.emplace_back(basis_.transpose() * product);
  extend_air();
}

void LayupModes::extend_term(Form form, const Model& model, Term& term, Eigen::Index old_size,
                             const Vectors& added) const
{
  const Vectors product = reduced::apply([&](std::size_t t, reduced::ElementMatrix& out)
                                         { reduced::element_matrix(form, model, t, covers_[t], out); },
                                         reduced::all_triangles(model.mesh), model.mesh, plain_.dofs, added);
  const Eigen::MatrixXd columns = basis_.transpose() * product;
  term.projected.conservativeResize(basis_.cols(), basis_.cols());
  term.projected.rightCols(added.cols()) = columns;
  term.projected.bottomLeftCorner(added.cols(), old_size) = columns.topRows(old_size).transpose();
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
  {
    Eigen::MatrixXd w(static_cast<Eigen::Index>(start_.mesh.nodes.size()), basis_.cols());
    for (Eigen::Index k = 0; k < w.cols(); ++k)
      w.col(k) = normal_displacement(start_.mesh, nodal_displacements(plain_.dofs, basis_.col(k)));
    added_mass_ += air_mass(start_.mesh, w, start_.air_density);
  }
}

QuickModes LayupModes::quick(const Laminate& laminate) const
{
  const SectionNumbers numbers = reader_.numbers(laminate);
  const Eigen::VectorXd k = combine_stiffness_->coefficients(numbers.stiffness);
  const Eigen::VectorXd m = combine_mass_->coefficients(numbers.mass);
  Eigen::MatrixXd K = Eigen::MatrixXd::Zero(basis_.cols(), basis_.cols());
  Eigen::MatrixXd M = added_mass_;
  QuickModes out{.frequencies_hz = {}, .shares = {}, .mass = 0.0};
  for (std::size_t i = 0; i < stiffness_.size(); ++i)
    K.triangularView<Eigen::Lower>() += k(static_cast<Eigen::Index>(i)) * stiffness_[i].projected;
  for (std::size_t i = 0; i < mass_.size(); ++i)
  {
    M.triangularView<Eigen::Lower>() += m(static_cast<Eigen::Index>(i)) * mass_[i].projected;
    out.mass += m(static_cast<Eigen::Index>(i)) * mass_[i].mass;
  }
  if (strip_)
  {
    const Eigen::VectorXd t = strip_->coefficients(laminate);
    for (std::size_t i = 0; i < torsion_.size(); ++i)
      K.triangularView<Eigen::Lower>() += t(static_cast<Eigen::Index>(i)) * torsion_[i];
  }
  reduced::SmallModes modes = reduced::small_modes(K, M, plain_.rigid_motions.cols(), num_modes_);
  out.frequencies_hz = modes.eigenvalues.cwiseSqrt() / two_pi;
  out.shares = std::move(modes.vectors);
  return out;
}

} // namespace plate::match
