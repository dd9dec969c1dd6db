// SPDX-License-Identifier: MPL-2.0
#include "load_words.h"

#include "modes_report.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/materials/library.h>

#include <algorithm>

namespace plate
{
namespace
{

bool same(const std::optional<Strength>& a, const std::optional<Strength>& b)
{
  if (!a || !b)
    return a.has_value() == b.has_value();
  return a->Xt == b->Xt && a->Xc == b->Xc && a->Yt == b->Yt && a->Yc == b->Yc && a->S == b->S;
}

bool same(const std::optional<ThroughStrength>& a, const std::optional<ThroughStrength>& b)
{
  if (!a || !b)
    return a.has_value() == b.has_value();
  return a->S13 == b->S13 && a->S23 == b->S23;
}

std::string source_of(const Material& material)
{
  for (const LibraryMaterial& entry : material_library())
    if (entry.material.name == material.name && same(entry.material.strength, material.strength) &&
        same(entry.material.through_strength, material.through_strength))
      return std::string(entry.strength_source);
  return "the design file";
}

} // namespace

const std::vector<std::string_view>& load_cautions()
{
  static const std::vector<std::string_view> cautions = {
      "Strings store energy: a part that gives way throws splinters. String an instrument for the first time behind a "
      "guard, with eyes protected, and in steps.",
      "Strengths scatter by a quarter and more from batch to batch; a margin below 2 to 3 after all knock-downs is "
      "none "
      "(common practice). Sharp corners and edges of supports are singular: there a finer mesh lowers the margin.",
      "Under lasting load wood and resin creep: in years the deflection may double (Wood Handbook, ch. 5, from "
      "memory).",
      "Arches buckle below the linear factor, imperfect ones at a half to a fifth of it (common practice).",
      "Local rules and licensed practice come first.",
      caution};
  return cautions;
}

std::string case_words(const LoadCase& load)
{
  const std::string force = message(fixed(load.force, load.force < 10.0 ? 2 : 1), " N");
  if (load.name == "strings")
    return message("strings: ", force, " through the feet of the bridge");
  if (load.name == "thumb")
    return message("thumb: ", force, " in the lower bout");
  if (load.name == "wing")
    return message("wing: knock of ", force, " on the edge of a soundhole");
  if (load.name == "grip")
    return message("grip: bare plate of ", force, " held at its end by two fingers");
  if (load.name == "corner")
    return message("corner: knock of ", force, " on the bare plate");
  return message("two fingers: bare plate of ", force, " carried on them");
}

std::string ply_words(const StrengthPlace& place)
{
  if (place.material == nullptr)
    return "none";
  return place.ply == 0 ? message("bar (", place.material->name, ")")
                        : message("ply ", place.ply, " (", place.material->name, ")");
}

std::vector<StrengthSource> strength_sources(std::span<const Model* const> models)
{
  std::vector<StrengthSource> sources;
  for (const Model* model : models)
    for (const Material* material : materials_of(*model))
    {
      const auto is_same = [&](const StrengthSource& other)
      {
        return other.material->name == material->name && same(other.material->strength, material->strength) &&
               same(other.material->through_strength, material->through_strength);
      };
      if ((material->strength || material->through_strength) && std::none_of(sources.begin(), sources.end(), is_same))
        sources.push_back({material, source_of(*material)});
    }
  return sources;
}

std::vector<std::string> not_judged(std::span<const Model* const> models)
{
  std::vector<std::string> names;
  for (const Model* model : models)
    for (const std::string& name : materials_without_strength(*model))
      if (std::find(names.begin(), names.end(), name) == names.end())
        names.push_back(name);
  return names;
}

std::string_view rim_word(EdgeSupport rim)
{
  switch (rim)
  {
  case EdgeSupport::free:
    return "free";
  case EdgeSupport::rest:
    return "rest";
  case EdgeSupport::hinged:
    return "hinged";
  case EdgeSupport::clamped:
    return "clamped";
  }
  return {};
}

} // namespace plate
