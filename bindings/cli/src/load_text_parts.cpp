// SPDX-License-Identifier: MPL-2.0
#include "load_text_parts.h"

#include "load_words.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <algorithm>
#include <cmath>

namespace plate
{
namespace
{

std::string tiny(double value)
{
  return value < 1e-9 ? std::string("below 1e-9") : compact(value, 2);
}

} // namespace

std::string margin_text(double margin)
{
  if (!std::isfinite(margin))
    return "-";
  return fixed(margin, margin < 10.0 ? 2 : margin < 100.0 ? 1 : 0);
}

std::string factors_text(const std::vector<AppliedFactor>& factors)
{
  std::string out;
  for (const AppliedFactor& factor : factors)
    out += message(out.empty() ? "" : ", ", factor.key, ' ', compact(factor.factor, 3));
  return out.empty() ? "none" : out;
}

std::string strengths_text(std::span<const Model* const> models)
{
  TextTable table({"<MPa", "Xt", "Xc", "Yt", "Yc", "S", "S13", "S23", "<source"});
  for (const auto& [material, source] : strength_sources(models))
  {
    std::vector<std::string> row = {material->name};
    const auto add = [&](bool known, double strength)
    { row.push_back(known ? compact(strength * megapascals, 4) : "-"); };
    const bool in_plane = material->strength.has_value();
    const Strength s = material->strength.value_or(Strength{});
    for (const double strength : {s.Xt, s.Xc, s.Yt, s.Yc, s.S})
      add(in_plane, strength);
    const bool through = material->through_strength.has_value();
    const ThroughStrength t = material->through_strength.value_or(ThroughStrength{});
    for (const double strength : {t.S13, t.S23})
      add(through, strength);
    row.push_back(source);
    table.add(row);
  }
  std::string out = table.text();
  for (const std::string& name : not_judged(models))
    out += message("  ", name, " has no strengths and is not judged\n");
  return out;
}

void Evidence::add(const StaticResult& solution, double balance_error)
{
  residual_ = std::max(residual_, solution.residual);
  energy_ = std::max(energy_, std::abs(2.0 * solution.energy / solution.work - 1.0));
  balance_ = std::max(balance_, balance_error);
}

std::string Evidence::text(std::string_view balance) const
{
  return message("  equilibrium: residual ", tiny(residual_), " of the load, ", balance, ' ', tiny(balance_),
                 ", energy and half the work differ by ", tiny(energy_), '\n');
}

std::string knock_downs_text(const KnockDowns& factors)
{
  std::string out = "Margins: how many times the load may grow until a ply fails; reduced: after knock-downs.\n";
  for (const KnockDownFactor& factor : knock_down_factors())
    out += message("  ", factor.key, ' ', compact(factors.*factor.factor, 3), ": ", factor.meaning,
                   " (default: ", factor.source, ")\n");
  return out + '\n';
}

std::string comparison_text(const std::vector<SharedCase>& cases, const Eigen::VectorXd& factors_here,
                            const Eigen::VectorXd& factors_of_reference)
{
  TextTable table(
      {"<case", "mm here", "mm ref.", "margin here", "margin ref.", "ratio", "reduced here", "reduced ref.", "ratio"});
  for (const auto& [name, here, reference] : cases)
    table.add({name, fixed(here.deflection * millimetres, 3), fixed(reference.deflection * millimetres, 3),
               margin_text(here.margin), margin_text(reference.margin), margin_text(here.margin / reference.margin),
               margin_text(here.reduced_margin), margin_text(reference.reduced_margin),
               margin_text(here.reduced_margin / reference.reduced_margin)});
  const auto buckling = [](const Eigen::VectorXd& factors)
  { return factors.size() > 0 ? margin_text(factors(0)) : std::string("-"); };
  return message(table.text(), "\n  buckling here at ", buckling(factors_here), ", ref. at ",
                 buckling(factors_of_reference), " times the string load\n\n");
}

} // namespace plate
