// SPDX-License-Identifier: MPL-2.0
#include "model_difference.h"

#include <algorithm>

namespace plate
{

namespace
{

bool same(const OrthotropicElastic& a, const OrthotropicElastic& b)
{
  return a.E1 == b.E1 && a.E2 == b.E2 && a.E3 == b.E3 && a.G12 == b.G12 && a.G13 == b.G13 && a.G23 == b.G23 &&
         a.nu12 == b.nu12 && a.nu13 == b.nu13 && a.nu23 == b.nu23;
}

bool same(const Material& a, const Material& b)
{
  return same(a.elastic, b.elastic) && a.density == b.density;
}

bool same(const Ply& a, const Ply& b)
{
  return same(a.material, b.material) && a.thickness == b.thickness && a.grain == b.grain &&
         a.angle.in_radians() == b.angle.in_radians();
}

bool same(const PlyDirections& a, const PlyDirections& b)
{
  return a.ply == b.ply && a.double_angle == b.double_angle;
}

bool same(const PointMass& a, const PointMass& b)
{
  return a.at == b.at && a.mass == b.mass;
}

template <class Part>
bool all_same(const std::vector<Part>& a, const std::vector<Part>& b)
{
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Part& x, const Part& y) { return same(x, y); });
}

bool same(const ShellMaterial& a, const ShellMaterial& b)
{
  return all_same(a.laminate.plies, b.laminate.plies) && a.axes.axis == b.axes.axis && a.axes.up == b.axes.up;
}

bool same(const Bar& a, const Bar& b)
{
  return same(a.material, b.material) && a.width == b.width && a.axis == b.axis &&
         a.profile.station == b.profile.station && a.profile.height == b.profile.height;
}

bool same(const Patch& a, const Patch& b)
{
  return a.side == b.side && all_same(a.laminate.plies, b.laminate.plies) && edge_of(a.region) == edge_of(b.region);
}

bool same_torsion(const BarTorsion* a, const BarTorsion* b)
{
  return a == nullptr || b == nullptr ? a == b : a->station == b->station && a->stiffness == b->stiffness;
}

/// For each part of one list whether the other list, as long, has another one in its place.
template <class Part>
std::vector<bool> differing(const std::vector<Part>& a, const std::vector<Part>& b)
{
  std::vector<bool> out;
  for (std::size_t i = 0; i < a.size(); ++i)
    out.push_back(!same(a[i], b[i]));
  return out;
}

bool holds(const std::vector<bool>& flags)
{
  return std::find(flags.begin(), flags.end(), true) != flags.end();
}

} // namespace

ModelDifference::ModelDifference(const Model& from, const Model& to)
    : from_(from), everywhere_(!same(from.material, to.material) || !all_same(from.directions, to.directions)),
      bars_(differing(from.bars, to.bars)), patches_(differing(from.patches, to.patches)),
      point_masses_(!all_same(from.masses, to.masses))
{
  const ShellMesh& a = from.mesh;
  const ShellMesh& b = to.mesh;
  for (std::size_t i = 0; i < a.nodes.size(); ++i)
    nodes_.push_back(a.nodes[i] != b.nodes[i] || a.normals[i] != b.normals[i] || a.thickness[i] != b.thickness[i]);
  for (std::size_t i = 0; i < bars_.size(); ++i)
    bars_[i] = bars_[i] || a.bars[i].station != b.bars[i].station;
}

bool ModelDifference::any() const
{
  return everywhere_ || point_masses_ || holds(nodes_) || holds(bars_) || holds(patches_);
}

bool ModelDifference::at_nodes_of(std::size_t triangle) const
{
  const auto& nodes = from_.mesh.triangles[triangle];
  return std::any_of(nodes.begin(), nodes.end(), [&](int node) { return nodes_[static_cast<std::size_t>(node)]; });
}

bool ModelDifference::in_triangle(std::size_t triangle, const TriangleCover& from, const TriangleCover& to) const
{
  const auto other_patch = [&](int patch) { return patches_[static_cast<std::size_t>(patch)]; };
  const auto other_bar = [&] { return from.bar >= 0 && bars_[static_cast<std::size_t>(from.bar)]; };
  return everywhere_ || at_nodes_of(triangle) || from.bar != to.bar || other_bar() || from.patches != to.patches ||
         from.patch_edge != to.patch_edge || std::any_of(from.patches.begin(), from.patches.end(), other_patch) ||
         !same_torsion(from.bar_torsion.get(), to.bar_torsion.get());
}

} // namespace plate
