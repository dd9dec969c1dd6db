// SPDX-License-Identifier: MPL-2.0
#include <plate/post/strength_map.h>

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/elements/shell_strains.h>

#include <algorithm>
#include <array>
#include <limits>

namespace plate
{

namespace
{

/// Share used at one place, before any mean is taken.
struct Use
{
  double share = 0.0;
  StrengthPlace place = {};
};

constexpr double most_share = 1e9; // where the stress held fixed fails alone

void judge(const Material& material, const MaterialComponents& load, const MaterialComponents& held,
           StrengthPlace place, Use& use)
{
  const std::optional<StrengthMargin> margin = strength_margin(material, load, held);
  if (!margin)
    return;
  const double share = margin->factor > 1.0 / most_share ? 1.0 / margin->factor : most_share;
  if (share <= use.share)
    return;
  place.material = &material;
  place.mode = margin->mode;
  place.stress = load + held;
  use = {.share = share, .place = place};
}

/// Bottom, middle and top of a layer.
std::array<double, 3> heights(double bottom, double top)
{
  return {bottom, 0.5 * (bottom + top), top};
}

/// Uses of all states at one point of one triangle.
std::vector<Use> uses_at(const ShellStrainPoint& point, const Bar* bar, const MaterialAxes& axes,
                         const StrengthOptions& options)
{
  std::vector<Use> uses(point.strains.size());
  const PlyStresses stresses(point.plies, point.frame, axes);
  for (std::size_t i = 0; i < point.plies.size(); ++i)
  {
    const PlacedPly& ply = point.plies[i];
    for (const double z : heights(ply.bottom, ply.top))
    {
      const MaterialComponents held = options.cure_change == 0.0 || ply.material->wood
                                          ? MaterialComponents(MaterialComponents::Zero())
                                          : stresses.cure_stress(i, z, options.cure_change);
      for (std::size_t state = 0; state < uses.size(); ++state)
        judge(*ply.material, stresses.stress(i, z, point.strains[state]), held,
              {.ply = static_cast<int>(i) + 1, .z = z}, uses[state]);
    }
  }
  if (point.bar)
    for (const double z : heights(point.bar->bottom, point.bar->top))
      for (std::size_t state = 0; state < uses.size(); ++state)
        judge(bar->material, bar_stress(*point.bar, z, point.strains[state]), MaterialComponents::Zero(),
              {.ply = 0, .z = z}, uses[state]);
  return uses;
}

/// Shares gathered at the nodes.
class Gathered
{
public:
  Gathered(std::size_t num_nodes, std::size_t num_states)
      : sums_(num_states, {Eigen::VectorXd::Zero(size(num_nodes)), Eigen::VectorXd::Zero(size(num_nodes))}),
        counts_({Eigen::VectorXd::Zero(size(num_nodes)), Eigen::VectorXd::Zero(size(num_nodes))}),
        worst_(num_states, std::vector<Use>(num_nodes))
  {
  }

  void add(std::size_t node, bool under_bar, const std::vector<Use>& uses)
  {
    const std::size_t kind = under_bar ? 1 : 0;
    counts_[kind](size(node)) += 1.0;
    for (std::size_t state = 0; state < uses.size(); ++state)
    {
      sums_[state][kind](size(node)) += uses[state].share;
      if (uses[state].share > worst_[state][node].share)
        worst_[state][node] = uses[state];
    }
  }

  [[nodiscard]] StrengthMap map(std::size_t state) const
  {
    const auto mean = [&](std::size_t kind)
    { return Eigen::VectorXd(sums_[state][kind].cwiseQuotient(counts_[kind].cwiseMax(1.0))); };
    StrengthMap map = {.used = mean(0).cwiseMax(mean(1)), .margin = 0.0, .worst = {}};
    Eigen::Index most = 0;
    const double greatest = map.used.maxCoeff(&most);
    map.margin = greatest > 0.0 ? 1.0 / greatest : std::numeric_limits<double>::infinity();
    map.worst = worst_[state][static_cast<std::size_t>(most)].place;
    map.worst.node = static_cast<std::size_t>(most);
    return map;
  }

private:
  static Eigen::Index size(std::size_t n) { return static_cast<Eigen::Index>(n); }

  std::vector<std::array<Eigen::VectorXd, 2>> sums_; // without and with a bar
  std::array<Eigen::VectorXd, 2> counts_;
  std::vector<std::vector<Use>> worst_;
};

bool has_strength(const Material& material)
{
  return material.strength || material.through_strength;
}

} // namespace

std::vector<const Material*> materials_of(const Model& model)
{
  std::vector<const Material*> all;
  const auto add = [&](const Material& material)
  {
    const auto same = [&](const Material* other) { return other->name == material.name; };
    if (std::none_of(all.begin(), all.end(), same))
      all.push_back(&material);
  };
  for (const Ply& ply : model.material.laminate.plies)
    add(ply.material);
  for (const Patch& patch : model.patches)
    for (const Ply& ply : patch.laminate.plies)
      add(ply.material);
  for (const Bar& bar : model.bars)
    add(bar.material);
  return all;
}

std::vector<std::string> materials_without_strength(const Model& model)
{
  std::vector<std::string> names;
  for (const Material* material : materials_of(model))
    if (!has_strength(*material))
      names.push_back(material->name);
  return names;
}

std::vector<StrengthMap> strength_maps(const Model& model, std::span<const NodalUnknowns> states,
                                       const StrengthOptions& options)
{
  const std::vector<const Material*> materials = materials_of(model);
  if (std::none_of(materials.begin(), materials.end(), [](const Material* m) { return has_strength(*m); }))
    throw InvalidInput(message("strength: no material of the plate has strengths, ", materials.front()->name,
                               " to begin with; give material.", materials.front()->name, ".strength"));
  const ShellMesh& mesh = model.mesh;
  const std::vector<TriangleCover> covers = triangle_covers(model);
  const CubicTriangle::Gradient coordinates = CubicTriangle::node_coordinates();
  std::vector<Eigen::Vector2d> places;
  for (Eigen::Index i = 0; i < coordinates.rows(); ++i)
    places.emplace_back(coordinates.row(i).transpose());
  Gathered gathered(mesh.nodes.size(), states.size());
  ShellTriangle::Displacements u(ShellTriangle::num_dofs, static_cast<Eigen::Index>(states.size()));
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const ElementInput element = element_input(model, t, covers[t]);
    for (std::size_t state = 0; state < states.size(); ++state)
      u.col(static_cast<Eigen::Index>(state)) = of_triangle(mesh, states[state], t);
    const std::vector<ShellStrainPoint> points = shell_strains(element.nodes, model.material, element.parts, places, u);
    for (std::size_t i = 0; i < points.size(); ++i)
      gathered.add(static_cast<std::size_t>(mesh.triangles[t][i]), points[i].bar.has_value(),
                   uses_at(points[i], element.parts.bar, model.material.axes, options));
  }
  std::vector<StrengthMap> maps;
  for (std::size_t state = 0; state < states.size(); ++state)
    maps.push_back(gathered.map(state));
  return maps;
}

} // namespace plate
