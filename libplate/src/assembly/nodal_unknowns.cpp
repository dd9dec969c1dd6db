// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/nodal_unknowns.h>

#include "sparse_sum.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/shell_geometric.h>
#include <plate/mesh/locate.h>

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

namespace plate
{

namespace
{

using ElementMatrix = ShellTriangle::Matrix;

/// Calls visit(node column, unknown of the node, equation or DofMap::held) for all unknowns.
template <class Visit>
void for_each_unknown(const DofMap& dofs, const Visit& visit)
{
  for (std::size_t node = 0; node < dofs.equation.size(); ++node)
    for (std::size_t k = 0; k < dofs.equation[node].size(); ++k)
      visit(static_cast<Eigen::Index>(node), static_cast<Eigen::Index>(k), dofs.equation[node][k]);
}

} // namespace

NodalUnknowns at_nodes(const DofMap& dofs, const Eigen::Ref<const Eigen::VectorXd>& x)
{
  NodalUnknowns values = NodalUnknowns::Zero(DofMap::dofs_per_node, static_cast<Eigen::Index>(dofs.equation.size()));
  for_each_unknown(dofs,
                   [&](Eigen::Index node, Eigen::Index k, int equation)
                   {
                     if (equation != DofMap::held)
                       values(k, node) = x(equation);
                   });
  return values;
}

Eigen::VectorXd on_unknowns(const DofMap& dofs, const NodalUnknowns& values)
{
  Eigen::VectorXd x = Eigen::VectorXd::Zero(dofs.num_equations); // third rotations of a body stay at zero
  for_each_unknown(dofs,
                   [&](Eigen::Index node, Eigen::Index k, int equation)
                   {
                     if (equation != DofMap::held)
                       x(equation) = values(k, node);
                   });
  return x;
}

NodalUnknowns on_held(const DofMap& dofs, const NodalUnknowns& values)
{
  NodalUnknowns held = NodalUnknowns::Zero(values.rows(), values.cols());
  for_each_unknown(dofs,
                   [&](Eigen::Index node, Eigen::Index k, int equation)
                   {
                     if (equation == DofMap::held)
                       held(k, node) = values(k, node);
                   });
  return held;
}

Eigen::Matrix<double, ShellTriangle::num_dofs, 1> of_triangle(const ShellMesh& mesh, const NodalUnknowns& values,
                                                              std::size_t triangle)
{
  Eigen::Matrix<double, ShellTriangle::num_dofs, 1> out;
  Eigen::Index k = 0;
  for (const int node : mesh.triangles[triangle])
  {
    out.segment<DofMap::dofs_per_node>(k) = values.col(node);
    k += DofMap::dofs_per_node;
  }
  return out;
}

ShellTriangle::Displacements of_triangle(const ShellMesh& mesh, const DofMap& dofs, const Eigen::MatrixXd& vectors,
                                         std::size_t triangle)
{
  ShellTriangle::Displacements u = ShellTriangle::Displacements::Zero(ShellTriangle::num_dofs, vectors.cols());
  Eigen::Index row = 0;
  for (const int node : mesh.triangles[triangle])
    for (const int equation : dofs.equation[static_cast<std::size_t>(node)])
    {
      if (equation != DofMap::held)
        u.row(row) = vectors.row(equation);
      ++row;
    }
  return u;
}

Eigen::SparseMatrix<double, Eigen::RowMajor> displacement_rows(const Model& model, const DofMap& dofs,
                                                               const Eigen::Vector2d& place)
{
  const std::optional<MeshPoint> point = locate(model.mesh, place);
  if (!point)
    throw InvalidInput(message("displacement_rows: x = ", place.x() * 1e3, ", y = ", place.y() * 1e3,
                               " mm lies beside the plate or in a hole; take a place on the plate"));
  const CubicTriangle::Vector N = CubicTriangle::shape(point->xi, point->eta);
  std::vector<Eigen::Triplet<double>> entries;
  for (int a = 0; a < CubicTriangle::num_nodes; ++a)
  {
    const auto node = static_cast<std::size_t>(model.mesh.triangles[point->triangle][static_cast<std::size_t>(a)]);
    for (int k = 0; k < 3; ++k)
      if (const int equation = dofs.equation[node][static_cast<std::size_t>(k)]; equation != DofMap::held)
        entries.emplace_back(k, equation, N(a));
  }
  Eigen::SparseMatrix<double, Eigen::RowMajor> rows(3, dofs.num_equations);
  rows.setFromTriplets(entries.begin(), entries.end());
  return rows;
}

Eigen::Matrix<double, 6, 1> resultant(const Model& model, const NodalUnknowns& forces)
{
  Eigen::Matrix<double, 6, 1> sum = Eigen::Matrix<double, 6, 1>::Zero();
  for (std::size_t node = 0; node < model.mesh.nodes.size(); ++node)
    sum += rigid_motions_of_node(model.mesh.nodes[node], model.mesh.normals[node], model.material.axes).transpose() *
           forces.col(static_cast<Eigen::Index>(node));
  return sum;
}

NodalUnknowns held_elastic_forces(const Model& model, const DofMap& dofs, const NodalUnknowns& displacements)
{
  NodalUnknowns forces = NodalUnknowns::Zero(displacements.rows(), displacements.cols());
  const auto is_held = [&](int node)
  {
    const auto& equations = dofs.equation[static_cast<std::size_t>(node)];
    return std::find(equations.begin(), equations.end(), DofMap::held) != equations.end();
  };
  const std::vector<TriangleCover> covers = triangle_covers(model);
  ElementMatrix Ke;
  for (std::size_t t = 0; t < model.mesh.triangles.size(); ++t)
  {
    const auto& nodes = model.mesh.triangles[t];
    if (std::none_of(nodes.begin(), nodes.end(), is_held))
      continue;
    const ElementInput element = element_input(model, t, covers[t]);
    ShellTriangle::stiffness(element.nodes, model.material, element.parts, Ke);
    const Eigen::Matrix<double, ShellTriangle::num_dofs, 1> f = Ke * of_triangle(model.mesh, displacements, t);
    Eigen::Index k = 0;
    for (const int node : nodes)
    {
      if (is_held(node))
        forces.col(node) += f.segment<DofMap::dofs_per_node>(k);
      k += DofMap::dofs_per_node;
    }
  }
  return forces;
}

SparseMatrix geometric_stiffness(const Model& model, const DofMap& dofs, const NodalUnknowns& displacements)
{
  const ShellMesh& mesh = model.mesh;
  SparseMatrix KG = sparse_sum::zero_matrix(
      sparse_sum::lower_pattern(unknowns_by_node(dofs), sparse_sum::neighbours(mesh.nodes.size(), mesh.triangles)));
  const std::vector<TriangleCover> covers = triangle_covers(model);
  ElementMatrix element_KG;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const ElementInput element = element_input(model, t, covers[t]);
    geometric_stiffness(element.nodes, model.material, element.parts, of_triangle(mesh, displacements, t), element_KG);
    std::array<int, ShellTriangle::num_dofs> equations;
    std::size_t k = 0;
    for (const int node : mesh.triangles[t])
      for (const int equation : dofs.equation[static_cast<std::size_t>(node)])
        equations[k++] = equation;
    sparse_sum::for_each_slot(KG, equations,
                              [&](std::ptrdiff_t slot, int r, int c) { KG.valuePtr()[slot] += element_KG(r, c); });
  }
  return KG;
}

} // namespace plate
