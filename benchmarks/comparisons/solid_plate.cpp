// SPDX-License-Identifier: MPL-2.0
#include "solid_plate.h"

#include <plate/validation/sample_models.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <getfem/getfem_generic_assembly.h>
#include <getfem/getfem_mesh.h>
#include <getfem/getfem_mesh_fem.h>
#include <getfem/getfem_mesh_im.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace plate::benchmarks
{
namespace
{

constexpr double length = 0.35;      // [m]
constexpr double width = 0.20;       // [m]
constexpr double arch = 0.015;       // [m]
constexpr double thickness = 2.5e-3; // [m]
constexpr double strip = 3e-3;       // [m]
constexpr int dimension = 3;

std::string with_order(const std::string& name, int order)
{
  return name + "(3," + std::to_string(order) + ")";
}

/// The six tetrahedra of a unit cube along its diagonal: corners of each, from the origin one coordinate after the
/// other.
std::vector<Eigen::Matrix<double, 3, 4>> tetrahedra_of_cube()
{
  std::vector<Eigen::Matrix<double, 3, 4>> tetrahedra;
  std::array<int, 3> axes = {0, 1, 2};
  do
  {
    Eigen::Matrix<double, 3, 4> corners = Eigen::Matrix<double, 3, 4>::Zero();
    for (int step = 0; step < dimension; ++step)
      corners.rightCols(dimension - step).row(axes[static_cast<std::size_t>(step)]).setOnes();
    tetrahedra.push_back(corners);
  } while (std::next_permutation(axes.begin(), axes.end()));
  return tetrahedra;
}

/// Nodes of the elements of one cell, in coordinates 0...1 of the cell.
std::vector<std::vector<Eigen::Vector3d>> elements_of_cell(const SolidMesh& mesh, const bgeot::geometric_trans& element)
{
  std::vector<std::vector<Eigen::Vector3d>> elements;
  if (mesh.shape == SolidShape::hexahedra)
  {
    for (auto& nodes = elements.emplace_back(); const bgeot::base_node& at : element.geometric_nodes())
      nodes.emplace_back(at[0], at[1], at[2]);
    return elements;
  }
  for (const Eigen::Matrix<double, 3, 4>& corners : tetrahedra_of_cube())
    for (auto& nodes = elements.emplace_back(); const bgeot::base_node& at : element.geometric_nodes())
      nodes.push_back(corners * Eigen::Vector4d(1.0 - at[0] - at[1] - at[2], at[0], at[1], at[2]));
  return elements;
}

/// Grid lines over [-half, half]; rows of narrow cells become wider away from the edge.
std::vector<double> lines(double half, int cells, int strips)
{
  std::vector<double> out = validation::lines_with_strips(half, cells, strip);
  for (int row = 1; row < strips; ++row)
  {
    const double from_edge = strip * std::pow(static_cast<double>(row) / strips, 2);
    out.push_back(-half + from_edge);
    out.push_back(half - from_edge);
  }
  std::sort(out.begin(), out.end());
  return out;
}

void fill(getfem::mesh& mesh, const SolidMesh& wanted)
{
  const validation::Surface surface = validation::biparabolic(length, width, arch);
  const std::vector<double> x = lines(0.5 * length, wanted.cells_x, wanted.strips);
  const std::vector<double> y = lines(0.5 * width, wanted.cells_y, wanted.strips);
  const auto element = bgeot::geometric_trans_descriptor(
      with_order(wanted.shape == SolidShape::hexahedra ? "GT_QK" : "GT_PK", wanted.order));
  const auto elements = elements_of_cell(wanted, *element);
  const auto node = [&](std::size_t i, std::size_t j, int layer, const Eigen::Vector3d& at)
  {
    const double px = std::lerp(x[i], x[i + 1], at.x());
    const double py = std::lerp(y[j], y[j + 1], at.y());
    const double height = thickness * ((layer + at.z()) / wanted.layers - 0.5);
    const Eigen::Vector3d p = surface.position(px, py) + height * surface.normal(px, py);
    return bgeot::base_node(p.x(), p.y(), p.z());
  };
  for (int layer = 0; layer < wanted.layers; ++layer)
    for (std::size_t j = 0; j + 1 < y.size(); ++j)
      for (std::size_t i = 0; i + 1 < x.size(); ++i)
        for (const std::vector<Eigen::Vector3d>& cell_nodes : elements)
        {
          std::vector<bgeot::base_node> nodes;
          for (const Eigen::Vector3d& at : cell_nodes)
            nodes.push_back(node(i, j, layer, at));
          mesh.add_convex_by_points(element, nodes.begin());
        }
}

/// Stiffness C of the carved wood, whose axes are x, y, z everywhere, as GetFEM stores a tensor: first index fastest.
std::vector<double> stiffness_tensor(const OrthotropicElastic& m)
{
  Eigen::Matrix3d compliance;
  compliance << 1.0 / m.E1, -m.nu12 / m.E1, -m.nu13 / m.E1, //
      -m.nu12 / m.E1, 1.0 / m.E2, -m.nu23 / m.E2,           //
      -m.nu13 / m.E1, -m.nu23 / m.E2, 1.0 / m.E3;
  const Eigen::Matrix3d normal = compliance.inverse();
  Eigen::Matrix3d shear;
  shear << 0.0, m.G12, m.G13, m.G12, 0.0, m.G23, m.G13, m.G23, 0.0;
  std::vector<double> C;
  for (int l = 0; l < dimension; ++l)
    for (int k = 0; k < dimension; ++k)
      for (int j = 0; j < dimension; ++j)
        for (int i = 0; i < dimension; ++i)
        {
          const bool normal_pair = i == j && k == l;
          const bool shear_pair = i != j && ((i == k && j == l) || (i == l && j == k));
          C.push_back(normal_pair ? normal(i, k) : shear_pair ? shear(i, j) : 0.0);
        }
  return C;
}

SparseMatrix lower_triangle(const getfem::model_real_sparse_matrix& matrix)
{
  const auto n = static_cast<int>(gmm::mat_ncols(matrix));
  SparseMatrix out(n, n);
  std::vector<Eigen::Triplet<double>> entries;
  for (int column = 0; column < n; ++column)
  {
    const auto entries_of_column = gmm::mat_const_col(matrix, static_cast<std::size_t>(column));
    for (auto it = gmm::vect_const_begin(entries_of_column); it != gmm::vect_const_end(entries_of_column); ++it)
      if (static_cast<int>(it.index()) >= column)
        entries.emplace_back(static_cast<int>(it.index()), column, *it);
  }
  out.setFromTriplets(entries.begin(), entries.end());
  return out;
}

/// Shifts along and turns about x, y, z.
Eigen::MatrixXd rigid_motions_of(const getfem::mesh_fem& fem)
{
  const auto n = static_cast<Eigen::Index>(fem.nb_dof());
  Eigen::MatrixXd rigid = Eigen::MatrixXd::Zero(n, 6);
  for (Eigen::Index k = 0; k < n; ++k)
  {
    const auto component = static_cast<Eigen::Index>(fem.basic_dof_qdim(static_cast<std::size_t>(k)));
    const bgeot::base_node p = fem.point_of_basic_dof(static_cast<std::size_t>(k));
    const Eigen::Vector3d at(p[0], p[1], p[2]);
    rigid(k, component) = 1.0;
    for (int axis = 0; axis < dimension; ++axis)
      rigid(k, dimension + axis) = Eigen::Vector3d::Unit(axis).cross(at)(component);
  }
  return rigid;
}

std::vector<std::vector<int>> unknowns_by_point(const getfem::mesh_fem& fem)
{
  std::vector<std::vector<int>> groups(fem.nb_dof() / dimension);
  for (std::size_t k = 0; k < fem.nb_dof(); ++k)
    groups[k / dimension].push_back(static_cast<int>(k));
  return groups;
}

} // namespace

struct SolidPlate::Implementation
{
  getfem::mesh mesh;
  getfem::mesh_fem fem{mesh, dimension};
  getfem::mesh_im integration{mesh};
};

SolidPlate::SolidPlate(const SolidMesh& mesh) : implementation_(std::make_unique<Implementation>())
{
  Implementation& data = *implementation_;
  fill(data.mesh, mesh);
  const bool hexahedra = mesh.shape == SolidShape::hexahedra;
  data.fem.set_finite_element(getfem::fem_descriptor(with_order(hexahedra ? "FEM_QK" : "FEM_PK", mesh.order)));
  // Exact for the mass of straight elements: the same points as usual in practice.
  const std::string rule = hexahedra ? "IM_GAUSS_PARALLELEPIPED" : "IM_TETRAHEDRON";
  data.integration.set_integration_method(getfem::int_method_descriptor(
      hexahedra ? with_order(rule, 2 * mesh.order + 1) : rule + "(" + std::to_string(2 * mesh.order + 1) + ")"));
}

SolidPlate::~SolidPlate() = default;

Eigenproblem SolidPlate::assemble(double shift) const
{
  const Implementation& data = *implementation_;
  const Material spruce = validation::reference_spruce();
  const std::size_t n = data.fem.nb_dof();
  const std::vector<double> at_rest(n); // a workspace keeps references
  const std::vector<double> C = stiffness_tensor(spruce.elastic);
  const std::vector<double> density = {spruce.density};
  const auto matrix = [&](const std::string& expression)
  {
    getfem::ga_workspace workspace;
    workspace.add_fem_variable("u", data.fem, gmm::sub_interval(0, n), at_rest);
    workspace.add_fixed_size_constant("C", C);
    workspace.add_fixed_size_constant("rho", density);
    workspace.add_expression(expression, data.integration);
    workspace.assembly(2);
    return lower_triangle(workspace.assembled_matrix());
  };
  return make_eigenproblem(matrix("(Reshape(C,3,3,3,3):Grad_Test2_u):Grad_Test_u"), matrix("rho*Test2_u.Test_u"),
                           rigid_motions_of(data.fem), unknowns_by_point(data.fem), shift);
}

} // namespace plate::benchmarks
