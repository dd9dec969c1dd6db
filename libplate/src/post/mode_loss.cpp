// SPDX-License-Identifier: MPL-2.0
#include <plate/post/mode_loss.h>

namespace plate
{

namespace
{

ShellTriangle::Displacements element_displacements(const Model& model, const DofMap& dofs, std::size_t triangle,
                                                   const Eigen::MatrixXd& shapes)
{
  ShellTriangle::Displacements u = ShellTriangle::Displacements::Zero(ShellTriangle::num_dofs, shapes.cols());
  Eigen::Index row = 0;
  for (const int node : model.mesh.triangles[triangle])
    for (const int equation : dofs.equation[static_cast<std::size_t>(node)])
    {
      if (equation != DofMap::held)
        u.row(row) = shapes.row(equation);
      ++row;
    }
  return u;
}

/// Strain energies of all modes with every modulus changed by `step` times its loss factor [J].
Eigen::VectorXd strain_energies(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& shapes, double step)
{
  const ShellMaterial material = {.laminate = with_loss_step(model.material.laminate, step), .axes = model.material.axes};
  std::vector<Bar> bars = model.bars;
  for (Bar& bar : bars)
    bar.material = with_loss_step(bar.material, step);
  const std::vector<int> bar_index = bar_of_triangle(model.mesh);
  Eigen::VectorXd energies = Eigen::VectorXd::Zero(shapes.cols());
  for (std::size_t t = 0; t < model.mesh.triangles.size(); ++t)
  {
    const ElementInput element = element_input(model, t, bar_index[t]);
    const Bar* bar = bar_index[t] < 0 ? nullptr : &bars[static_cast<std::size_t>(bar_index[t])];
    ShellTriangle::add_strain_energies(element.nodes, material, bar, element_displacements(model, dofs, t, shapes),
                                       energies);
  }
  return energies;
}

} // namespace

Eigen::VectorXd mode_losses(const Model& model, const DofMap& dofs, const Eigen::MatrixXd& shapes)
{
  // A centred difference: stiffness is smooth in the moduli, a step of 1 % of a loss factor leaves 1e-8 of error.
  constexpr double step = 0.01;
  const Eigen::VectorXd more = strain_energies(model, dofs, shapes, step);
  const Eigen::VectorXd less = strain_energies(model, dofs, shapes, -step);
  return (more - less).cwiseQuotient(more + less) / step;
}

} // namespace plate
