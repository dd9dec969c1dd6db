// SPDX-License-Identifier: MPL-2.0
#include "model_steps.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/air_mass.h>

namespace plate::sensitivity
{

namespace
{

Eigen::VectorXd pair_values(const Eigen::MatrixXd& matrix, std::span<const VectorPair> pairs)
{
  Eigen::VectorXd values(static_cast<Eigen::Index>(pairs.size()));
  for (std::size_t k = 0; k < pairs.size(); ++k)
    values(static_cast<Eigen::Index>(k)) = matrix(pairs[k].first, pairs[k].second);
  return values;
}

/// What the mass of the air around a model adds for pairs of shapes.
Eigen::VectorXd air_of(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& shapes,
                       std::span<const VectorPair> pairs)
{
  if (model.air_density == 0.0)
    return Eigen::VectorXd::Zero(static_cast<Eigen::Index>(pairs.size()));
  return pair_values(air_mass(model.mesh, normal_displacements(model.mesh, dofs, shapes), model.air_density), pairs);
}

bool same_air(const Model& a, const Model& b)
{
  const bool none = a.air_density == 0.0 && b.air_density == 0.0;
  return none || (a.air_density == b.air_density && a.mesh.nodes == b.mesh.nodes);
}

/// Change from one model to another.
FormSlopes change(const Model& from, const Model& to, const DofMap& dofs, const Eigen::MatrixXd& shapes,
                  std::span<const VectorPair> pairs)
{
  const FormChanges forms = form_changes(from, to, dofs, shapes, pairs);
  FormSlopes out = {.stiffness = forms.stiffness.rowwise().sum(),
                    .mass = forms.mass.rowwise().sum() + forms.point_mass,
                    .total_mass = forms.triangle_mass.sum() + forms.stuck_on,
                    .any = forms.any};
  if (!same_air(from, to))
  {
    out.mass += air_of(to, dofs, shapes, pairs) - air_of(from, dofs, shapes, pairs);
    out.any = true;
  }
  return out;
}

} // namespace

ModelSteps::ModelSteps(ParametricModel& design, std::span<const SensitivityParameter> parameters, const Model& base)
    : design_(design), parameters_(parameters), base_(base)
{
}

bool ModelSteps::moves(const Model& model) const
{
  return model.mesh.nodes != base_.mesh.nodes;
}

std::optional<Model> ModelSteps::model_at(std::size_t parameter, double value) const
{
  Model model = base_;
  try
  {
    design_.rebuild(point_beside(parameters_, parameter, value), model);
  }
  catch (const InvalidInput&)
  {
    return std::nullopt;
  }
  return model;
}

FormSlopes ModelSteps::slopes(std::size_t parameter, const DofMap& dofs, const Eigen::MatrixXd& shapes,
                              std::span<const VectorPair> pairs) const
{
  return slopes_by_steps(
      parameter, parameters_[parameter], base_, [&](double value) { return model_at(parameter, value); },
      [&](const Model& model) { return moves(model); },
      [&](const Model& from, const Model& to) { return change(from, to, dofs, shapes, pairs); });
}

} // namespace plate::sensitivity
