// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <cmath>

namespace plate::test
{

ShellMesh rectangle(double length, double width, int cells_x, int cells_y, double thickness)
{
  const auto lines = [](double side, int cells)
  {
    std::vector<double> out;
    for (int i = 0; i <= cells; ++i)
      out.push_back(side * (static_cast<double>(i) / cells - 0.5));
    return out;
  };
  return grid_mesh(
      {.x = lines(length, cells_x), .y = lines(width, cells_y), .surface = flat(), .thickness = thickness});
}

void distort(ShellMesh& mesh, double length, double width, double amount)
{
  for (Eigen::Vector3d& node : mesh.nodes)
  {
    const double u = 2.0 * node.x() / length;
    const double v = 2.0 * node.y() / width;
    const double inside = (1.0 - u * u) * (1.0 - v * v); // zero on the outline
    node.x() += amount * length * inside * std::sin(5.0 * v + 2.0 * u + 0.4);
    node.y() += amount * width * inside * std::cos(4.0 * u - 3.0 * v);
  }
}

void straighten_edges(ShellMesh& mesh)
{
  for (const auto& triangle : mesh.triangles)
  {
    const auto node = [&](std::size_t k) -> Eigen::Vector3d&
    { return mesh.nodes[static_cast<std::size_t>(triangle[k])]; };
    for (std::size_t edge = 0; edge < 3; ++edge)
    {
      const Eigen::Vector3d from = node(edge);
      const Eigen::Vector3d step = (node((edge + 1) % 3) - from) / 3.0;
      node(3 + 2 * edge) = from + step;
      node(4 + 2 * edge) = from + 2.0 * step;
    }
    node(9) = (node(0) + node(1) + node(2)) / 3.0;
  }
}

Eigen::VectorXd unknowns_of(const Model& model, const DofMap& dofs, const Field& field)
{
  Eigen::VectorXd x = Eigen::VectorXd::Zero(dofs.num_equations);
  for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i)
  {
    const Eigen::Vector3d& node = model.mesh.nodes[i];
    const Eigen::Matrix3d frame = shell_frame(model.mesh.normals[i], model.material.axes);
    const Eigen::Vector3d change = field.director_change(node);
    Eigen::Matrix<double, 5, 1> values;
    // A turn theta moves the director by theta x d: about t1 towards -t2, about t2 towards t1.
    values << field.displacement(node), -change.dot(frame.col(1)), change.dot(frame.col(0));
    for (std::size_t k = 0; k < 5; ++k)
      if (dofs.equation[i][k] != DofMap::held)
        x(dofs.equation[i][k]) = values(static_cast<Eigen::Index>(k));
  }
  return x;
}

} // namespace plate::test
