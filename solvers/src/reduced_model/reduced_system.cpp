// SPDX-License-Identifier: MPL-2.0
#include "reduced_system.h"

#include "snapshot_vectors.h"

#include <plate/assembly/nodal_unknowns.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/air_mass.h>

#include <utility>

namespace plate::reduced
{

namespace
{

/// Mass of all triangles, from the momentum of a shift along x.
double mass_of(const Model& model, const std::vector<TriangleCover>& covers)
{
  Eigen::Matrix<double, ShellTriangle::num_dofs, 1> shift = Eigen::Matrix<double, ShellTriangle::num_dofs, 1>::Zero();
  for (int i = 0; i < ShellTriangle::num_nodes; ++i)
    shift(DofMap::dofs_per_node * i) = 1.0;
  double mass = 0.0;
  ElementMatrix matrix;
  for (std::size_t t = 0; t < covers.size(); ++t)
  {
    element_matrix(Form::mass, model, t, covers[t], matrix);
    mass += shift.dot(matrix * shift);
  }
  return mass;
}

} // namespace

void ReducedMatrix::add(double factor, const ReducedMatrix& term)
{
  projected.triangularView<Eigen::Lower>() += factor * term.projected;
  sketched += factor * term.sketched;
}

double ReducedMatrix::form(const Eigen::VectorXd& x) const
{
  return x.dot(projected.selfadjointView<Eigen::Lower>() * x);
}

ReducedSystem::ReducedSystem(ParametricModel& design, const Model& reference, const std::vector<TriangleCover>& covers,
                             const DofMap& dofs, const CoefficientMap& map, Vectors fields)
    : design_(design), reference_(reference), covers_(covers), dofs_(dofs), map_(map), fields_(std::move(fields)),
      basis_(fields_.rows(), 0), stiffness_(map.terms().stiffness.size()), torsion_(map.torsion().num_terms()),
      mass_(map.terms().mass.size()), point_masses_(reference.masses.size()),
      term_masses_(static_cast<Eigen::Index>(mass_.size()))
{
  Model model = reference;
  for (std::size_t i = 0; i < mass_.size(); ++i)
  {
    design_.rebuild(map_.terms().mass[i], model);
    term_masses_(static_cast<Eigen::Index>(i)) = mass_of(model, covers_);
  }
}

void ReducedSystem::extend(const Vectors& added)
{
  basis_.conservativeResize(Eigen::NoChange, basis_.cols() + added.cols());
  basis_.rightCols(added.cols()) = added;
  Model model = reference_;
  const auto product = [&](Form form, const Point& point)
  {
    design_.rebuild(point, model);
    return apply(form, model, covers_, dofs_, added);
  };
  for (std::size_t i = 0; i < stiffness_.size(); ++i)
    extend(stiffness_[i], product(Form::stiffness, map_.terms().stiffness[i]));
  for (std::size_t i = 0; i < mass_.size(); ++i)
    extend(mass_[i], product(Form::mass, map_.terms().mass[i]));
  for (std::size_t i = 0; i < torsion_.size(); ++i)
    extend(torsion_[i], map_.torsion().apply_term(i, reference_, covers_, dofs_, added));
  for (std::size_t i = 0; i < point_masses_.size(); ++i)
  {
    const auto rows = displacement_rows(reference_, dofs_, reference_.masses[i].at);
    const Eigen::MatrixXd u = rows * basis_;
    point_masses_[i].projected = u.transpose() * u;
    point_masses_[i].sketched = (rows * fields_).transpose() * u;
  }
}

void ReducedSystem::extend(ReducedMatrix& term, const Vectors& product) const
{
  extend_projection(basis_, product, term.projected);
  term.sketched.conservativeResize(fields_.cols(), basis_.cols());
  term.sketched.rightCols(product.cols()) = fields_.transpose() * product;
}

void ReducedSystem::add_air()
{
  const Eigen::Index size = basis_.cols();
  Eigen::MatrixXd w(static_cast<Eigen::Index>(reference_.mesh.nodes.size()), size + fields_.cols());
  w << normal_displacements(reference_.mesh, dofs_, basis_), normal_displacements(reference_.mesh, dofs_, fields_);
  const Eigen::MatrixXd mass = air_mass(reference_.mesh, w, 1.0);
  air_ = {mass.topLeftCorner(size, size), mass.bottomLeftCorner(fields_.cols(), size)};
}

ReducedPair ReducedSystem::combined(const Coefficients& coefficients) const
{
  const ReducedMatrix zero = {Eigen::MatrixXd::Zero(basis_.cols(), basis_.cols()),
                              Eigen::MatrixXd::Zero(fields_.cols(), basis_.cols())};
  const auto add = [](ReducedMatrix& sum, const Eigen::VectorXd& factors, const std::vector<ReducedMatrix>& terms)
  {
    for (std::size_t i = 0; i < terms.size(); ++i)
      sum.add(factors(static_cast<Eigen::Index>(i)), terms[i]);
  };
  ReducedPair pair = {zero, zero};
  add(pair.stiffness, coefficients.stiffness.coefficients, stiffness_);
  add(pair.stiffness, coefficients.torsion, torsion_);
  add(pair.mass, coefficients.mass.coefficients, mass_);
  add(pair.mass, coefficients.point_masses, point_masses_);
  if (air_.projected.size() > 0)
    pair.mass.add(coefficients.air_density, air_);
  return pair;
}

double ReducedSystem::torsion_energy(const Coefficients& coefficients, const Eigen::VectorXd& vector) const
{
  double energy = 0.0;
  for (std::size_t i = 0; i < torsion_.size(); ++i)
    energy += 0.5 * coefficients.torsion(static_cast<Eigen::Index>(i)) * torsion_[i].form(vector);
  return energy;
}

double ReducedSystem::mass(const Coefficients& coefficients) const
{
  return term_masses_.dot(coefficients.mass.coefficients) + coefficients.point_masses.sum();
}

} // namespace plate::reduced
