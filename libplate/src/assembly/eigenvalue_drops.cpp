// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/eigenvalue_drops.h>

#include <plate/assembly/nodal_unknowns.h>
#include <plate/elements/enriched_triangle.h>
#include <plate/mesh/locate.h>

#include <Eigen/Cholesky>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace plate
{

namespace
{

constexpr int node_dofs = DofMap::dofs_per_node;
constexpr int num_edge_dofs = EnrichedTriangle::num_edge_dofs;

/// Weight of what lies on the triangle of a point mass. The deflection under it grows with the logarithm of the size of
/// the triangles: finer ones add the same again and again, of which quartic displacements see one step. With this
/// weight the bars cover meshes down to a sixth of the size (tests/accuracy).
constexpr double point_mass_weight = 3.0;

void weigh(EnrichedTriangle& triangle, double weight)
{
  triangle.inner *= weight;
  for (EnrichedTriangle::Edge& edge : triangle.edges)
    edge.residuals *= std::sqrt(weight);
}

/// Point masses by triangle.
std::vector<std::vector<TriangleMass>> masses_by_triangle(const Model& model)
{
  std::vector<std::vector<TriangleMass>> masses(model.mesh.triangles.size());
  for (const PointMass& mass : model.masses)
    if (const std::optional<MeshPoint> place = locate(model.mesh, mass.at))
      masses[place->triangle].push_back({.mass = mass.mass, .xi = place->xi, .eta = place->eta});
  return masses;
}

/// The problems of the edges, added up from their triangles.
class EdgeProblems
{
public:
  EdgeProblems(const Model& model, const DofMap& dofs, Eigen::Index num_modes)
      : dofs_(dofs), num_modes_(num_modes), edge_of_node_(model.mesh.nodes.size(), none)
  {
    for (const auto& nodes : model.mesh.triangles)
      for (std::size_t k = 0; k < 3; ++k)
        if (int& edge = edge_of_node_[first_node(nodes, k)]; edge == none)
        {
          edge = static_cast<int>(nodes_.size());
          nodes_.push_back(std::minmax(nodes[3 + 2 * k], nodes[4 + 2 * k]));
        }
    const auto num_edges = static_cast<Eigen::Index>(nodes_.size());
    stiffness_ = Eigen::MatrixXd::Zero(num_edge_dofs, num_edge_dofs * num_edges);
    residuals_ = Eigen::MatrixXd::Zero(num_edge_dofs, num_modes * num_edges);
  }

  void add(const std::array<int, ShellTriangle::num_nodes>& nodes, const EnrichedTriangle& triangle)
  {
    for (std::size_t k = 0; k < 3; ++k)
    {
      const EnrichedTriangle::Edge& side = triangle.edges[k];
      const int edge = edge_of_node_[first_node(nodes, k)];
      // Neighbours meet the nodes of an edge in opposite order.
      const std::array<int, 3> order = nodes[3 + 2 * k] < nodes[4 + 2 * k] ? std::array{0, 1, 2} : std::array{1, 0, 2};
      for (int i = 0; i < 3; ++i)
      {
        const int from = node_dofs * order[static_cast<std::size_t>(i)];
        residuals(edge).middleRows<node_dofs>(node_dofs * i) += side.residuals.middleRows<node_dofs>(from);
        for (int j = 0; j < 3; ++j)
          stiffness(edge).block<node_dofs, node_dofs>(node_dofs * i, node_dofs * j) +=
              side.stiffness.block<node_dofs, node_dofs>(from, node_dofs * order[static_cast<std::size_t>(j)]);
      }
    }
  }

  /// r^T K^-1 r of each mode, summed over the edges.
  [[nodiscard]] Eigen::VectorXd energies()
  {
    Eigen::VectorXd sum = Eigen::VectorXd::Zero(num_modes_);
    for (int edge = 0; edge < static_cast<int>(nodes_.size()); ++edge)
    {
      hold(edge);
      const Eigen::LLT<EnrichedTriangle::EdgeMatrix> factor(stiffness(edge));
      sum += factor.matrixL().solve(residuals(edge)).colwise().squaredNorm().transpose();
    }
    return sum;
  }

private:
  static constexpr int none = -1;

  /// The inner node of an edge by which it is known; no other edge has it.
  static std::size_t first_node(const std::array<int, ShellTriangle::num_nodes>& nodes, std::size_t edge)
  {
    return static_cast<std::size_t>(std::min(nodes[3 + 2 * edge], nodes[4 + 2 * edge]));
  }

  Eigen::Block<Eigen::MatrixXd, num_edge_dofs, num_edge_dofs> stiffness(int edge)
  {
    return stiffness_.block<num_edge_dofs, num_edge_dofs>(0, num_edge_dofs * edge);
  }
  Eigen::Block<Eigen::MatrixXd, num_edge_dofs, Eigen::Dynamic> residuals(int edge)
  {
    return {residuals_, 0, num_modes_ * edge, num_edge_dofs, num_modes_};
  }

  /// Takes the unknowns of supports out; those of a bubble are held where both nodes of its edge are.
  void hold(int edge)
  {
    const auto& of_a = dofs_.equation[static_cast<std::size_t>(nodes_[static_cast<std::size_t>(edge)].first)];
    const auto& of_b = dofs_.equation[static_cast<std::size_t>(nodes_[static_cast<std::size_t>(edge)].second)];
    for (std::size_t k = 0; k < node_dofs; ++k)
    {
      const bool a = of_a[k] == DofMap::held;
      const bool b = of_b[k] == DofMap::held;
      const std::array<bool, 3> held = {a, b, a && b};
      for (std::size_t function = 0; function < held.size(); ++function)
        if (held[function])
          hold_unknown(edge, static_cast<int>(node_dofs * function + k));
    }
  }

  void hold_unknown(int edge, int unknown)
  {
    stiffness(edge).row(unknown).setZero();
    stiffness(edge).col(unknown).setZero();
    stiffness(edge)(unknown, unknown) = 1.0;
    residuals(edge).row(unknown).setZero();
  }

  const DofMap& dofs_; // outlives the problems
  Eigen::Index num_modes_;
  std::vector<int> edge_of_node_;          // by inner node
  std::vector<std::pair<int, int>> nodes_; // of each edge, ascending
  Eigen::MatrixXd stiffness_;              // edge beside edge
  Eigen::MatrixXd residuals_;
};

} // namespace

EigenvalueDrops eigenvalue_drops(const Model& model, const DofMap& dofs, const ApproximateModes& modes)
{
  const Eigen::Index num_modes = modes.eigenvalues.size();
  const std::vector<std::vector<TriangleMass>> masses = masses_by_triangle(model);
  const std::vector<TriangleCover> covers = triangle_covers(model);
  EigenvalueDrops drops{.enrichment = Eigen::VectorXd::Zero(num_modes), .data = {}};
  Eigen::VectorXd strain = Eigen::VectorXd::Zero(num_modes);
  Eigen::VectorXd kinetic = Eigen::VectorXd::Zero(num_modes);
  EdgeProblems edges(model, dofs, num_modes);
  EnrichedTriangle enriched;
  for (std::size_t t = 0; t < model.mesh.triangles.size(); ++t)
  {
    const ElementInput element = element_input(model, t, covers[t]);
    const ShellTriangle::Displacements u = of_triangle(model.mesh, dofs, modes.shapes, t);
    enrich(element.nodes, model.material, element.parts,
           {.shapes = u, .eigenvalues = modes.eigenvalues, .masses = masses[t]}, enriched);
    if (!masses[t].empty())
      weigh(enriched, point_mass_weight);
    edges.add(model.mesh.triangles[t], enriched);
    drops.enrichment += enriched.inner;
    strain += enriched.twice_strain;
    kinetic += enriched.twice_kinetic;
  }
  drops.enrichment += edges.energies();
  drops.data = strain.cwiseQuotient(kinetic) - modes.eigenvalues;
  return drops;
}

} // namespace plate
