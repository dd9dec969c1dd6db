// SPDX-License-Identifier: MPL-2.0
#include "knock_down.h"

#include <algorithm>
#include <array>

namespace plate
{
namespace
{

bool is_at_hole(const ShellMesh& mesh, std::size_t node)
{
  return std::any_of(
      mesh.boundary.begin(), mesh.boundary.end(),
      [&](const EdgeGroup& group)
      {
        return group.name.starts_with("hole") &&
               std::any_of(group.edges.begin(), group.edges.end(),
                           [&](const std::array<int, 4>& edge)
                           { return std::find(edge.begin(), edge.end(), static_cast<int>(node)) != edge.end(); });
      });
}

} // namespace

const std::vector<KnockDownFactor>& knock_down_factors()
{
  static const std::vector<KnockDownFactor> factors = {
      {"hand_layup", &KnockDowns::hand_layup, "laminates laid by hand", "from memory"},
      {"hole_edge", &KnockDowns::hole_edge, "laminates at the cut edge of a hole", "from memory: 0.5 to 0.6"},
      {"hot_wet", &KnockDowns::hot_wet, "laminates in heat and moisture", "from memory: 0.7 to 0.85"},
      {"sustained_laminate", &KnockDowns::sustained_laminate, "laminates under strings for years",
       "from memory: carbon 0.7 to 0.8"},
      {"sustained_wood", &KnockDowns::sustained_wood, "wood under strings for years",
       "from memory: Wood Handbook, ch. 5, duration of load"}};
  return factors;
}

LoadDuration duration_of(std::string_view load_case)
{
  return load_case == "strings" ? LoadDuration::lasting : LoadDuration::passing;
}

double reduced(double margin, const std::vector<AppliedFactor>& factors)
{
  for (const AppliedFactor& factor : factors)
    margin *= factor.factor;
  return margin;
}

std::vector<AppliedFactor> knock_downs_of(const StrengthPlace& worst, const Model& model, LoadDuration duration,
                                          const KnockDowns& factors)
{
  if (worst.material == nullptr)
    return {};
  const bool lasting = duration == LoadDuration::lasting;
  if (worst.material->wood)
    return lasting ? std::vector<AppliedFactor>{{"sustained_wood", factors.sustained_wood}}
                   : std::vector<AppliedFactor>{};
  std::vector<AppliedFactor> applied = {{"hand_layup", factors.hand_layup}, {"hot_wet", factors.hot_wet}};
  if (is_at_hole(model.mesh, worst.node))
    applied.push_back({"hole_edge", factors.hole_edge});
  if (lasting)
    applied.push_back({"sustained_laminate", factors.sustained_laminate});
  return applied;
}

} // namespace plate
