// SPDX-License-Identifier: MPL-2.0
#include "load_report.h"

#include "load_text_parts.h"
#include "load_words.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace plate
{
namespace
{

std::string head_text(const LoadResult& result)
{
  const Strings& strings = result.load.strings;
  const bool own_supports = !result.design.supports.empty();
  std::string out = message(result.design.title, "\n  mass ", fixed(result.mass * grams, 1), " g; on its rim ",
                            own_supports ? "as the file holds it" : rim_word(result.setup.rim), "; strings of ",
                            fixed(strings.tension, 0), " N bent by ",
                            compact(strings.angle.in_radians() * 180.0 / std::numbers::pi, 4), " degrees press with ",
                            fixed(result.setup.strings.downforce, 1), " N\n");
  out += message("  feet of the bridge sink by ", fixed(-result.study.foot_deflections[0] * millimetres, 3),
                 " mm (y > 0) and ", fixed(-result.study.foot_deflections[1] * millimetres, 3), " mm (y < 0)");
  for (const double force : result.study.post_forces)
    out += message("; the soundpost carries ", fixed(force, 1), " N");
  return out + '\n';
}

std::string cases_text(const LoadResult& result)
{
  TextTable table({"<case", "deflection mm", "margin", "reduced", "x mm", "y mm", "<gives way", "<knock-downs"});
  const std::vector<LoadCase>& cases = result.study.cases;
  for (std::size_t i = 0; i < cases.size(); ++i)
  {
    const LoadCase& load = cases[i];
    const Eigen::Vector3d& where = result.model.mesh.nodes[load.strength.worst.node];
    table.add({load.name, fixed(load.deflection * millimetres, 3), margin_text(load.strength.margin),
               margin_text(reduced_margin(result, i)), fixed(where.x() * millimetres, 0),
               fixed(where.y() * millimetres, 0),
               message(ply_words(load.strength.worst), ", ", words(load.strength.worst.mode)),
               factors_text(result.knock_downs[i])});
  }
  return table.text();
}

std::string stability_text(const LoadStudy& study)
{
  const Eigen::VectorXd& factors = study.buckling.factors;
  std::string out = factors.size() == 0
                        ? std::string("  the string load does not make the plate buckle\n")
                        : message("  buckling at ", margin_text(factors(0)), " times the string load\n");
  out += "  modes on the rim, without -> with strings:";
  for (Eigen::Index i = 0; i < study.frequencies_hz.size(); ++i)
    out += message(i == 0 ? " " : ", ", fixed(study.frequencies_hz(i), 1), " -> ",
                   i < study.loaded_frequencies_hz.size() ? fixed(study.loaded_frequencies_hz(i), 1) : "none", " Hz");
  return out + '\n';
}

std::string evidence_text(const LoadStudy& study)
{
  Evidence evidence;
  for (const LoadCase& load : study.cases)
    evidence.add(load.evidence, load.balance_error);
  return evidence.text("reactions");
}

std::string design_text(const LoadResult& result, bool timing)
{
  std::string out = head_text(result) + '\n' + cases_text(result) + '\n' + stability_text(result.study) +
                    evidence_text(result.study) + '\n' + strengths_text(std::array<const Model*, 1>{&result.model}) +
                    '\n';
  if (timing)
    out += message("seconds: ", fixed(result.seconds, 2), "\n\n");
  return out;
}

std::string comparison_text(const LoadResult& result, const LoadResult& reference)
{
  return message("here: ", result.design.title, "\nref.: ", reference.design.title, "\n\n",
                 comparison_text(shared_cases(result, reference), result.study.buckling.factors,
                                 reference.study.buckling.factors));
}

} // namespace

std::string load_text(const LoadOutcome& outcome, bool timing)
{
  std::string out = design_text(outcome.design, timing);
  if (outcome.reference)
    out += design_text(*outcome.reference, timing) + comparison_text(outcome.design, *outcome.reference);
  for (const LoadCase& load : outcome.design.study.cases)
    out += case_words(load) + '\n';
  out += '\n' + knock_downs_text(outcome.design.load.knock_downs);
  for (const std::string_view caution : load_cautions())
    out += message(caution, '\n');
  return out;
}

std::string load_csv(const LoadOutcome& outcome)
{
  std::string out = csv_line({"design", "case", "force_n", "deflection_mm", "margin", "reduced_margin", "x_mm", "y_mm",
                              "ply", "material", "gives_way"});
  const auto add = [&](const LoadResult& result)
  {
    for (std::size_t i = 0; i < result.study.cases.size(); ++i)
    {
      const LoadCase& load = result.study.cases[i];
      const StrengthPlace& worst = load.strength.worst;
      const Eigen::Vector3d& where = result.model.mesh.nodes[worst.node];
      const auto margin = [](double value) { return std::isfinite(value) ? compact(value) : std::string(); };
      out += csv_line({result.design.title, load.name, compact(load.force), compact(load.deflection * millimetres),
                       margin(load.strength.margin), margin(reduced_margin(result, i)),
                       compact(where.x() * millimetres), compact(where.y() * millimetres), std::to_string(worst.ply),
                       worst.material == nullptr ? "" : worst.material->name, std::string(words(worst.mode))});
    }
  };
  add(outcome.design);
  if (outcome.reference)
    add(*outcome.reference);
  return out;
}

} // namespace plate
