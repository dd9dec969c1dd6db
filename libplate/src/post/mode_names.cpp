// SPDX-License-Identifier: MPL-2.0
#include <plate/post/mode_names.h>

#include <plate/post/surface_integral.h>

#include <Eigen/Geometry>

#include <array>

namespace plate
{

namespace
{

/// Nodes of the outer edge with the length each stands for (holes are not the edge a maker looks at).
struct OuterEdge
{
  std::vector<int> nodes;
  Eigen::VectorXd length; // [m]
};

OuterEdge outer_edge(const ShellMesh& mesh)
{
  OuterEdge outer;
  std::vector<double> lengths;
  for (const EdgeGroup& group : mesh.boundary)
  {
    if (group.name.starts_with("hole"))
      continue;
    for (const auto& edge : group.edges)
      for (std::size_t k = 0; k + 1 < edge.size(); ++k)
      {
        const auto& a = mesh.nodes[static_cast<std::size_t>(edge[k])];
        const auto& b = mesh.nodes[static_cast<std::size_t>(edge[k + 1])];
        const double half = 0.5 * (b - a).norm();
        outer.nodes.push_back(edge[k]);
        outer.nodes.push_back(edge[k + 1]);
        lengths.push_back(half);
        lengths.push_back(half);
      }
  }
  outer.length = Eigen::Map<const Eigen::VectorXd>(lengths.data(), static_cast<Eigen::Index>(lengths.size()));
  return outer;
}

/// Planform coordinates of the edge over half length and half width, from the middle of the plate.
Eigen::ArrayX2d scaled_coordinates(const ShellMesh& mesh, const OuterEdge& edge)
{
  Eigen::AlignedBox2d box;
  for (const int node : edge.nodes)
    box.extend(mesh.nodes[static_cast<std::size_t>(node)].head<2>());
  Eigen::ArrayX2d c(static_cast<Eigen::Index>(edge.nodes.size()), 2);
  for (Eigen::Index i = 0; i < c.rows(); ++i)
  {
    const Eigen::Vector2d p = mesh.nodes[static_cast<std::size_t>(edge.nodes[static_cast<std::size_t>(i)])].head<2>();
    c.row(i) = ((p - box.center()).array() / (0.5 * box.sizes().array())).transpose();
  }
  return c;
}

} // namespace

EdgeLikeness edge_likeness(const ShellMesh& mesh, const Eigen::Ref<const Eigen::VectorXd>& w)
{
  const OuterEdge edge = outer_edge(mesh);
  const Eigen::ArrayX2d c = scaled_coordinates(mesh, edge);
  const Eigen::ArrayXd at_edge = w(edge.nodes);
  const Eigen::ArrayXd weight = edge.length.array();
  const double total = weight.sum();
  const double square = (weight * at_edge.square()).sum();
  const auto correlation = [&](Eigen::ArrayXd pattern, bool remove_mean)
  {
    if (remove_mean)
      pattern -= (weight * pattern).sum() / total;
    const double product = (weight * at_edge * pattern).sum();
    return product * product / (square * (weight * pattern.square()).sum());
  };
  EdgeLikeness like;
  if (!(square > 0.0))
    return like;
  like.twist = correlation(c.col(0) * c.col(1), true);
  like.cross = correlation(c.col(0).square() - c.col(1).square(), true);
  like.ring = correlation(Eigen::ArrayXd::Ones(c.rows()), false);
  return like;
}

std::vector<std::string> name_modes(const ShellMesh& mesh, const Eigen::MatrixXd& normal_shapes)
{
  constexpr std::array<const char*, 3> names = {"M1", "M2", "M5"};
  // A bass bar mixes the ring with its neighbours: on demo tops the best mode keeps 0.2, the next ones have 0.14.
  std::array<double, 3> best = {0.5, 0.5, 0.15};
  std::array<Eigen::Index, 3> mode = {-1, -1, -1};
  for (Eigen::Index i = 0; i < normal_shapes.cols(); ++i)
  {
    const EdgeLikeness like = edge_likeness(mesh, normal_shapes.col(i));
    // The ends and sides of M2 do not balance: what is more like it is no ring.
    const std::array<double, 3> scores = {like.twist, like.cross, like.cross > like.ring ? 0.0 : like.ring};
    for (std::size_t k = 0; k < names.size(); ++k)
      if (scores[k] > best[k])
      {
        best[k] = scores[k];
        mode[k] = i;
      }
  }
  std::vector<std::string> out(static_cast<std::size_t>(normal_shapes.cols()));
  for (std::size_t k = 0; k < names.size(); ++k)
    if (mode[k] >= 0)
      out[static_cast<std::size_t>(mode[k])] = names[k];
  return out;
}

} // namespace plate
