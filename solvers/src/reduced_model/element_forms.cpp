// SPDX-License-Identifier: MPL-2.0
#include "element_forms.h"

#include "cross_products.h"

#include <numeric>

namespace plate::reduced
{

namespace
{

using ElementRows = Eigen::Matrix<double, ShellTriangle::num_dofs, Eigen::Dynamic, Eigen::RowMajor>;

} // namespace

void element_matrix(Form form, const Model& model, std::size_t triangle, const TriangleCover& cover, ElementMatrix& out)
{
  const ElementInput element = element_input(model, triangle, cover);
  (form == Form::stiffness ? ShellTriangle::stiffness : ShellTriangle::mass)(element.nodes, model.material,
                                                                             element.parts, out);
}

std::vector<TriangleCover> without_torsion(std::vector<TriangleCover> covers)
{
  for (TriangleCover& cover : covers)
    cover.bar_torsion.reset();
  return covers;
}

Model without_point_masses(Model model)
{
  model.masses.clear();
  return model;
}

Vectors apply(const ElementMatrices& matrices, std::span<const std::size_t> triangles, const ShellMesh& mesh,
              const DofMap& dofs, const Vectors& vectors)
{
  Vectors out = Vectors::Zero(vectors.rows(), vectors.cols());
  ElementMatrix matrix;
  ElementRows local(ShellTriangle::num_dofs, vectors.cols());
  ElementRows product(ShellTriangle::num_dofs, vectors.cols());
  for (const std::size_t triangle : triangles)
  {
    matrices(triangle, matrix);
    local.setZero();
    for_each_unknown(mesh, dofs, triangle, [&](int row, int equation) { local.row(row) = vectors.row(equation); });
    product = cross_products(matrix, local); // the matrix is symmetric
    for_each_unknown(mesh, dofs, triangle, [&](int row, int equation) { out.row(equation) += product.row(row); });
  }
  return out;
}

Vectors apply(Form form, const Model& model, const std::vector<TriangleCover>& covers, const DofMap& dofs,
              const Vectors& vectors)
{
  std::vector<std::size_t> triangles(model.mesh.triangles.size());
  std::iota(triangles.begin(), triangles.end(), std::size_t{0});
  return apply([&](std::size_t t, ElementMatrix& out) { element_matrix(form, model, t, covers[t], out); }, triangles,
               model.mesh, dofs, vectors);
}

} // namespace plate::reduced
