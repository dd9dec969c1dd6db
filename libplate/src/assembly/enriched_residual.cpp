// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/enriched_residual.h>

#include "sparse_sum.h"

#include <plate/elements/enriched_triangle.h>
#include <plate/mesh/locate.h>

#include <Eigen/Cholesky>

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <utility>

namespace plate
{

namespace
{

constexpr int num_shared = EnrichedTriangle::num_shared_dofs;
constexpr int num_inner = EnrichedTriangle::num_dofs - num_shared;
constexpr int per_node = DofMap::dofs_per_node;
using ElementMatrix = EnrichedTriangle::Matrix;
using ElementColumns = Eigen::Matrix<double, EnrichedTriangle::num_dofs, Eigen::Dynamic>;

/// Numbering of the unknowns that triangles share, corner by corner and edge by edge.
struct SharedUnknowns
{
  std::vector<std::vector<int>> groups;                  // unknowns of each corner and edge
  std::vector<std::array<int, 6>> groups_of;             // per triangle: three corners, three edges
  std::vector<std::array<int, num_shared>> equations_of; // per triangle, held ones negative
  int num_equations = 0;
};

/// Numbers five unknowns; those of them that `held` marks are left out.
std::array<int, per_node> number_function(const std::array<bool, per_node>& held, std::vector<int>& group, int& next)
{
  std::array<int, per_node> equations;
  for (std::size_t k = 0; k < held.size(); ++k)
  {
    equations[k] = held[k] ? DofMap::held : next;
    if (!held[k])
      group.push_back(next++);
  }
  return equations;
}

class SharedNumbering
{
public:
  SharedNumbering(const ShellMesh& mesh, const DofMap& dofs) : mesh_(mesh), dofs_(dofs), node_(mesh.nodes.size())
  {
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
      add_triangle(t);
  }

  [[nodiscard]] SharedUnknowns finish() { return std::move(unknowns_); }

private:
  /// A corner or an edge once numbered: its group and the equations of its bubble, if it is an edge.
  struct Numbered
  {
    int group;
    std::array<int, per_node> bubble;
  };

  [[nodiscard]] std::array<bool, per_node> held(int node) const
  {
    std::array<bool, per_node> flags;
    const auto& equations = dofs_.equation[static_cast<std::size_t>(node)];
    std::transform(equations.begin(), equations.end(), flags.begin(), [](int e) { return e == DofMap::held; });
    return flags;
  }

  void number_node(int node, std::vector<int>& group)
  {
    node_[static_cast<std::size_t>(node)] = number_function(held(node), group, unknowns_.num_equations);
  }

  int new_group(std::vector<int> equations)
  {
    unknowns_.groups.push_back(std::move(equations));
    return static_cast<int>(unknowns_.groups.size()) - 1;
  }

  const Numbered& corner(int node)
  {
    const auto [place, is_new] = corners_.try_emplace(node);
    if (is_new)
    {
      std::vector<int> group;
      number_node(node, group);
      place->second.group = new_group(std::move(group));
    }
    return place->second;
  }

  /// An edge by its inner nodes, which no other edge has. Its bubble is held where both of them are.
  const Numbered& edge(int a, int b)
  {
    const auto [place, is_new] = edges_.try_emplace(std::min(a, b));
    if (is_new)
    {
      std::vector<int> group;
      number_node(a, group);
      number_node(b, group);
      std::array<bool, per_node> both = held(a);
      const auto held_b = held(b);
      for (std::size_t k = 0; k < both.size(); ++k)
        both[k] = both[k] && held_b[k];
      place->second.bubble = number_function(both, group, unknowns_.num_equations);
      place->second.group = new_group(std::move(group));
    }
    return place->second;
  }

  void add_triangle(std::size_t t)
  {
    const auto& nodes = mesh_.triangles[t];
    auto& groups = unknowns_.groups_of.emplace_back();
    auto& equations = unknowns_.equations_of.emplace_back();
    for (std::size_t k = 0; k < 3; ++k)
    {
      groups[k] = corner(nodes[k]).group;
      const Numbered& side = edge(nodes[3 + 2 * k], nodes[4 + 2 * k]);
      groups[3 + k] = side.group;
      std::copy(side.bubble.begin(), side.bubble.end(),
                equations.begin() + per_node * (EnrichedTriangle::first_edge_bubble + static_cast<int>(k)));
    }
    for (std::size_t i = 0; i < EnrichedTriangle::first_edge_bubble; ++i)
    {
      const auto& of_node = node_[static_cast<std::size_t>(nodes[i])];
      std::copy(of_node.begin(), of_node.end(), equations.begin() + per_node * static_cast<int>(i));
    }
  }

  const ShellMesh& mesh_; // both outlive the numbering
  const DofMap& dofs_;
  std::vector<std::array<int, per_node>> node_; // equations of the nodes numbered so far
  std::map<int, Numbered> corners_;
  std::map<int, Numbered> edges_;
  SharedUnknowns unknowns_;
};

/// Unknowns of a triangle in each mode, zero for the bubbles and where held.
ElementColumns element_shapes(const Model& model, const DofMap& dofs, std::size_t triangle,
                              const Eigen::MatrixXd& shapes)
{
  ElementColumns u = ElementColumns::Zero(EnrichedTriangle::num_dofs, shapes.cols());
  for (std::size_t i = 0; i < ShellTriangle::num_nodes; ++i)
  {
    const auto node = static_cast<std::size_t>(model.mesh.triangles[triangle][i]);
    for (std::size_t k = 0; k < per_node; ++k)
      if (const int equation = dofs.equation[node][k]; equation != DofMap::held)
        u.row(per_node * EnrichedTriangle::function_of_node[i] + static_cast<int>(k)) = shapes.row(equation);
  }
  return u;
}

void add_point_mass(double mass, const MeshPoint& point, ElementMatrix& M)
{
  const EnrichedTriangle::Values N = EnrichedTriangle::values(point.xi, point.eta);
  for (int a = 0; a < N.size(); ++a)
    for (int b = 0; b < N.size(); ++b)
      M.block<3, 3>(per_node * a, per_node * b).diagonal().array() += mass * N(a) * N(b);
}

} // namespace

EnrichedResidual enriched_residual(const Model& model, const DofMap& dofs, const ApproximateModes& modes, double shift)
{
  SharedUnknowns unknowns = SharedNumbering(model.mesh, dofs).finish();
  const Eigen::Index num_modes = modes.shapes.cols();
  EnrichedResidual out;
  out.A = sparse_sum::zero_matrix(unknowns.groups, sparse_sum::neighbours(unknowns.groups.size(), unknowns.groups_of));
  out.residuals = Eigen::MatrixXd::Zero(unknowns.num_equations, num_modes);
  out.inner = Eigen::VectorXd::Zero(num_modes);
  Eigen::VectorXd elastic = Eigen::VectorXd::Zero(num_modes);
  Eigen::VectorXd kinetic = Eigen::VectorXd::Zero(num_modes);
  std::vector<std::optional<MeshPoint>> places;
  for (const PointMass& mass : model.masses)
    places.push_back(locate(model.mesh, mass.at));

  const std::vector<TriangleCover> covers = triangle_covers(model);
  ElementMatrix K;
  ElementMatrix M;
  for (std::size_t t = 0; t < model.mesh.triangles.size(); ++t)
  {
    const ElementInput element = element_input(model, t, covers[t]);
    EnrichedTriangle::matrices(element.nodes, model.material, element.parts, K, M);
    for (std::size_t i = 0; i < places.size(); ++i)
      if (places[i] && places[i]->triangle == t)
        add_point_mass(model.masses[i].mass, *places[i], M);

    const ElementColumns u = element_shapes(model, dofs, t, modes.shapes);
    const ElementColumns Ku = K * u;
    const ElementColumns Mu = M * u;
    elastic += u.cwiseProduct(Ku).colwise().sum().transpose();
    kinetic += u.cwiseProduct(Mu).colwise().sum().transpose();
    const ElementColumns r = Mu * modes.eigenvalues.asDiagonal() - Ku;

    K -= shift * M;
    const Eigen::LLT<Eigen::Matrix<double, num_inner, num_inner>> inner(K.bottomRightCorner<num_inner, num_inner>());
    const Eigen::Matrix<double, num_inner, num_shared> from_shared =
        inner.solve(K.bottomLeftCorner<num_inner, num_shared>());
    const Eigen::Matrix<double, num_shared, num_shared> condensed =
        K.topLeftCorner<num_shared, num_shared>() - K.topRightCorner<num_shared, num_inner>() * from_shared;
    const auto r_inner = r.bottomRows<num_inner>();
    out.inner += r_inner.cwiseProduct(inner.solve(r_inner)).colwise().sum().transpose();
    const Eigen::Matrix<double, num_shared, Eigen::Dynamic> r_shared =
        r.topRows<num_shared>() - from_shared.transpose() * r_inner;

    const auto& equations = unknowns.equations_of[t];
    sparse_sum::for_each_slot(out.A, equations,
                              [&](std::ptrdiff_t slot, int row, int column)
                              { out.A.valuePtr()[slot] += condensed(row, column); });
    for (int row = 0; row < num_shared; ++row)
      if (const int equation = equations[static_cast<std::size_t>(row)]; equation != DofMap::held)
        out.residuals.row(equation) += r_shared.row(row);
  }
  out.rayleigh = elastic.cwiseQuotient(kinetic);
  out.groups = std::move(unknowns.groups);
  return out;
}

} // namespace plate
