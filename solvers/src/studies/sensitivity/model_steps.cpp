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

/// a * first + b * second.
FormSlopes combined(double a, const FormSlopes& first, double b, const FormSlopes& second)
{
  return {.stiffness = a * first.stiffness + b * second.stiffness,
          .mass = a * first.mass + b * second.mass,
          .total_mass = a * first.total_mass + b * second.total_mass,
          .any = first.any || second.any};
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
  std::vector<double> point;
  for (const SensitivityParameter& p : parameters_)
    point.push_back(p.value);
  point[parameter] = value;
  Model model = base_;
  try
  {
    design_.rebuild(point, model);
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
  const auto& [value, scale] = parameters_[parameter];
  double step = relative_step * scale;
  std::optional<Model> up = model_at(parameter, value + step);
  std::optional<Model> down = up && moves(*up) ? std::nullopt : model_at(parameter, value - step);
  if ((up && moves(*up)) || (down && moves(*down)))
  {
    step = moving_step * scale;
    up = model_at(parameter, value + step);
    down = model_at(parameter, value - step);
  }
  if (up && down)
  {
    const FormSlopes both = change(*down, *up, dofs, shapes, pairs);
    return combined(0.5 / step, both, 0.0, both);
  }
  if (!up && !down)
    throw InvalidInput(message("sensitivities: parameter ", parameter + 1, " = ", value,
                               ": there is no design a step of ", step, " to either side; leave it out"));
  const double sign = up ? 1.0 : -1.0;
  const std::optional<Model> further = model_at(parameter, value + 2.0 * sign * step);
  if (!further)
    throw InvalidInput(message("sensitivities: parameter ", parameter + 1, " = ", value, ": there is no design ",
                               2.0 * step, " beside it; leave it out"));
  return combined(sign * 2.0 / step, change(base_, up ? *up : *down, dofs, shapes, pairs), sign * -0.5 / step,
                  change(base_, *further, dofs, shapes, pairs));
}

} // namespace plate::sensitivity
