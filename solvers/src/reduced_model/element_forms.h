// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/dof_map.h>
#include <plate/assembly/model.h>

#include <Eigen/Core>

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

namespace plate::reduced
{

using ElementMatrix = ShellTriangle::Matrix;
/// Vectors of unknowns as columns; rows lie together, as elements gather them.
using Vectors = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// Which of the two quadratic forms of a plate.
enum class Form
{
  stiffness,
  mass
};

/// Matrix of one triangle, without what the cover leaves out (bar_torsion).
void element_matrix(Form form, const Model& model, std::size_t triangle, const TriangleCover& cover,
                    ElementMatrix& out);

/// The covers without the torsion of bars, which is not a property of one triangle.
[[nodiscard]] std::vector<TriangleCover> without_torsion(std::vector<TriangleCover> covers);

/// Stuck-on masses are points, which no triangle's matrix has.
[[nodiscard]] Model without_point_masses(Model model);

/// Calls visit(row of the element, equation) for each unknown of a triangle that is not held.
template <class Visit>
void for_each_unknown(const ShellMesh& mesh, const DofMap& dofs, std::size_t triangle, Visit visit)
{
  int row = 0;
  for (const int node : mesh.triangles[triangle])
    for (const int equation : dofs.equation[static_cast<std::size_t>(node)])
    {
      if (equation != DofMap::held)
        visit(row, equation);
      ++row;
    }
}

/// Writes the matrix of a triangle.
using ElementMatrices = std::function<void(std::size_t triangle, ElementMatrix& out)>;

/// Sum over triangles times vectors, (num_equations, columns).
///
/// @param triangles  those that contribute
[[nodiscard]] Vectors apply(const ElementMatrices& matrices, std::span<const std::size_t> triangles,
                            const ShellMesh& mesh, const DofMap& dofs, const Vectors& vectors);

/// A form of the whole plate times vectors, without what the covers leave out, (num_equations, columns).
[[nodiscard]] Vectors apply(Form form, const Model& model, const std::vector<TriangleCover>& covers, const DofMap& dofs,
                            const Vectors& vectors);

} // namespace plate::reduced
