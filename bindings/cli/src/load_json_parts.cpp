// SPDX-License-Identifier: MPL-2.0
#include "load_json_parts.h"

#include "load_words.h"
#include "text_table.h"

#include <plate/core/units.h>

#include <cmath>
#include <optional>

namespace plate
{
namespace
{

} // namespace

Json finite(double value)
{
  return std::isfinite(value) ? Json(rounded(value)) : Json(nullptr);
}

Json numbers(const Eigen::VectorXd& values)
{
  Json json = Json::array();
  for (const double value : values)
    json.push_back(rounded(value));
  return json;
}

Json place_json(const Eigen::Vector2d& at)
{
  return {rounded(at.x() * millimetres), rounded(at.y() * millimetres)};
}

Json stress_json(const MaterialComponents& stress)
{
  Json json = Json::array();
  for (const double value : stress)
    json.push_back(rounded(value * megapascals));
  return json;
}

Json factors_json(const std::vector<AppliedFactor>& factors)
{
  Json json = Json::object();
  for (const AppliedFactor& factor : factors)
    json[std::string(factor.key)] = rounded(factor.factor);
  return json;
}

Json strengths_json(std::span<const Model* const> models)
{
  Json json = Json::array();
  for (const auto& [material, source] : strength_sources(models))
  {
    Json entry = {{"material", material->name}, {"wood", material->wood}, {"source", source}};
    if (const std::optional<Strength>& s = material->strength)
      entry["in_plane_mpa"] = {{"Xt", rounded(s->Xt * megapascals)},
                               {"Xc", rounded(s->Xc * megapascals)},
                               {"Yt", rounded(s->Yt * megapascals)},
                               {"Yc", rounded(s->Yc * megapascals)},
                               {"S", rounded(s->S * megapascals)}};
    if (const std::optional<ThroughStrength>& t = material->through_strength)
      entry["through_mpa"] = {{"S13", rounded(t->S13 * megapascals)}, {"S23", rounded(t->S23 * megapascals)}};
    json.push_back(entry);
  }
  return json;
}

Json knock_downs_json(const KnockDowns& factors)
{
  Json json = Json::object();
  for (const KnockDownFactor& factor : knock_down_factors())
    json[std::string(factor.key)] = {
        {"factor", rounded(factors.*factor.factor)}, {"meaning", factor.meaning}, {"source_of_default", factor.source}};
  return json;
}

bool in_equilibrium(const StaticResult& evidence, double balance_error)
{
  return evidence.residual <= 1e-9 && balance_error <= 1e-9;
}

Json comparison_json(const std::vector<SharedCase>& cases)
{
  Json json = Json::array();
  for (const auto& [name, here, reference] : cases)
    json.push_back({{"case", name},
                    {"margin_ratio", finite(here.margin / reference.margin)},
                    {"reduced_margin_ratio", finite(here.reduced_margin / reference.reduced_margin)},
                    {"deflection_ratio", finite(here.deflection / reference.deflection)}});
  return json;
}

} // namespace plate
