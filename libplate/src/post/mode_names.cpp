// SPDX-License-Identifier: MPL-2.0
#include <plate/post/mode_names.h>

#include <plate/post/surface_integral.h>

#include <Eigen/Geometry>

#include <array>
#include <utility>

namespace plate
{

namespace
{

/// Nodes of the outer edge with the length each stands for (holes are not the edge a maker looks at).
struct OuterEdge
{
  std::vector<int> nodes;
  Eigen::ArrayXd length; // [m]
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
  outer.length = Eigen::Map<const Eigen::ArrayXd>(lengths.data(), static_cast<Eigen::Index>(lengths.size()));
  return outer;
}

Eigen::AlignedBox2d box_of(const ShellMesh& mesh, const OuterEdge& edge)
{
  Eigen::AlignedBox2d box;
  for (const int node : edge.nodes)
    box.extend(mesh.nodes[static_cast<std::size_t>(node)].head<2>());
  return box;
}

/// Planform coordinates of nodes over half length and half width, from the middle of the plate.
Eigen::ArrayX2d scaled_coordinates(const ShellMesh& mesh, const Eigen::AlignedBox2d& box)
{
  Eigen::ArrayX2d c(static_cast<Eigen::Index>(mesh.nodes.size()), 2);
  for (Eigen::Index i = 0; i < c.rows(); ++i)
  {
    const Eigen::Vector2d p = mesh.nodes[static_cast<std::size_t>(i)].head<2>();
    c.row(i) = ((p - box.center()).array() / (0.5 * box.sizes().array())).transpose();
  }
  return c;
}

/// A shape to compare with: values and what each stands for, length of an edge or area.
struct Pattern
{
  Eigen::ArrayXd value;
  Eigen::ArrayXd weight;

  Pattern(Eigen::ArrayXd shape, Eigen::ArrayXd weights) : value(std::move(shape)), weight(std::move(weights))
  {
    value -= (weight * value).sum() / weight.sum();
  }

  /// Squared correlation; 0 for a shape that is zero everywhere.
  [[nodiscard]] double likeness(const Eigen::ArrayXd& w) const
  {
    const double product = (weight * w * value).sum();
    const double square = (weight * w.square()).sum();
    return square > 0.0 ? product * product / (square * (weight * value.square()).sum()) : 0.0;
  }
};

/// The three patterns on one mesh.
class MakersPatterns
{
public:
  explicit MakersPatterns(const ShellMesh& mesh) : MakersPatterns(mesh, outer_edge(mesh)) {}

  [[nodiscard]] ShapeLikeness likeness(const Eigen::Ref<const Eigen::VectorXd>& w) const
  {
    const Eigen::ArrayXd at_edge = w(edge_nodes_);
    return {.twist = twist_.likeness(at_edge), .cross = cross_.likeness(at_edge), .ring = ring_.likeness(w.array())};
  }

private:
  MakersPatterns(const ShellMesh& mesh, const OuterEdge& edge)
      : MakersPatterns(edge, scaled_coordinates(mesh, box_of(mesh, edge)), nodal_areas(mesh).array())
  {
  }

  MakersPatterns(const OuterEdge& edge, const Eigen::ArrayX2d& c, const Eigen::ArrayXd& area)
      : edge_nodes_(edge.nodes), twist_((c.col(0) * c.col(1))(edge.nodes), edge.length),
        cross_((c.col(0).square() - c.col(1).square())(edge.nodes), edge.length),
        ring_((1.0 - c.col(0).square()) * (1.0 - c.col(1).square()), area)
  {
  }

  std::vector<int> edge_nodes_;
  Pattern twist_;
  Pattern cross_;
  Pattern ring_;
};

} // namespace

ShapeLikeness shape_likeness(const ShellMesh& mesh, const Eigen::Ref<const Eigen::VectorXd>& w)
{
  return MakersPatterns(mesh).likeness(w);
}

std::vector<std::string> name_modes(const ShellMesh& mesh, const Eigen::MatrixXd& normal_shapes)
{
  constexpr std::array<const char*, 3> names = {"M1", "M2", "M5"};
  // A bass bar mixes the ring with its neighbours: on tops of the family the best mode keeps 0.3 to 0.55, the next ones
  // have 0.2 to 0.3.
  std::array<double, 3> best = {0.5, 0.5, 0.25};
  std::array<Eigen::Index, 3> mode = {-1, -1, -1};
  const MakersPatterns patterns(mesh);
  for (Eigen::Index i = 0; i < normal_shapes.cols(); ++i)
  {
    const ShapeLikeness like = patterns.likeness(normal_shapes.col(i));
    // Bending along the plate alone is half a ring, but more like M2.
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
