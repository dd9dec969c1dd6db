// SPDX-License-Identifier: MPL-2.0
#include <plate/post/mode_loss.h>

#include <plate/assembly/nodal_unknowns.h>

namespace plate
{

namespace
{

/// The model with every modulus changed by `step` times its loss factor.
Model with_loss_step(Model model, double step)
{
  model.material.laminate = with_loss_step(model.material.laminate, step);
  for (Patch& patch : model.patches)
    patch.laminate = with_loss_step(patch.laminate, step);
  for (Bar& bar : model.bars)
    bar.material = with_loss_step(bar.material, step);
  return model;
}

/// Strain energies of all modes [J].
Eigen::VectorXd strain_energies(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& shapes)
{
  const std::vector<TriangleCover> covers = triangle_covers(model);
  Eigen::VectorXd energies = Eigen::VectorXd::Zero(shapes.cols());
  for (std::size_t t = 0; t < model.mesh.triangles.size(); ++t)
  {
    const ElementInput element = element_input(model, t, covers[t]);
    ShellTriangle::add_strain_energies(element.nodes, model.material, element.parts,
                                       of_triangle(model.mesh, dofs, shapes, t), energies);
  }
  return energies;
}

} // namespace

Eigen::VectorXd mode_losses(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& shapes)
{
  // A centred difference: stiffness is smooth in the moduli, a step of 1 % of a loss factor leaves 1e-8 of error.
  constexpr double step = 0.01;
  const Eigen::VectorXd more = strain_energies(with_loss_step(model, step), dofs, shapes);
  const Eigen::VectorXd less = strain_energies(with_loss_step(model, -step), dofs, shapes);
  return (more - less).cwiseQuotient(more + less) / step;
}

} // namespace plate
