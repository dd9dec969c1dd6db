// SPDX-License-Identifier: MPL-2.0
#include "body_load_report.h"

#include "load_text_parts.h"
#include "load_words.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace plate
{
namespace
{

double degrees(const Eigen::Vector3d& direction)
{
  return std::asin(-direction.z()) * 180.0 / std::numbers::pi;
}

std::string millimetres_text(double length, int decimals)
{
  return fixed(length * millimetres, decimals);
}

std::string head_text(const BodyLoadResult& result)
{
  const BodyLoadStudy& study = result.study;
  std::string out =
      message(result.design.title, "\n  mass ", fixed(study.mass * grams, 1), " g; strings of ",
              fixed(result.design.strings.tension, 0), " N fall by ", fixed(degrees(study.path.to_neck), 1),
              " degrees to the neck and ", fixed(degrees(study.path.to_lower), 1), " to the lower end and press with ",
              fixed(study.downforce, 1), " N on the bridge\n");
  const std::vector<double>& posts = study.cases.front().post_forces;
  for (std::size_t i = 0; i < posts.size(); ++i)
    out += message("  the soundpost carries ", fixed(posts[i], 1), " N of it into the back, ",
                   fixed(post_share(study, i) * percent, 1), " %; the edge of the top ", fixed(edge_force(study), 1),
                   " N into the ribs, ", fixed(edge_force(study) / study.downforce * percent, 1), " %\n");
  if (posts.empty())
    out += message("  without a soundpost the edge of the top carries all of it into the ribs\n");
  out += message("  against the ribs the feet of the bridge sink by ", millimetres_text(-study.foot_deflections[0], 3),
                 " mm (y > 0) and ", millimetres_text(-study.foot_deflections[1], 3), " mm (y < 0)");
  for (const auto& [top, back] : study.post_deflections)
    out += message(", the post by ", millimetres_text(-top, 3), " mm on the top and ", millimetres_text(-back, 3),
                   " mm on the back");
  return out + '\n';
}

std::string cases_text(const BodyLoadResult& result)
{
  TextTable table({"<case", "deflection mm", "<of", "post N", "margin", "reduced", "<part", "x mm", "y mm", "z mm",
                   "<gives way", "<knock-downs"});
  for (std::size_t i = 0; i < result.study.cases.size(); ++i)
  {
    const BodyLoadCase& load = result.study.cases[i];
    std::vector<std::string> row = {load.name,
                                    millimetres_text(load.deflection, 3),
                                    result.model.body.parts[load.most_moved.part].name,
                                    load.post_forces.empty() ? "-" : fixed(load.post_forces.front(), 1),
                                    margin_text(load.margin()),
                                    margin_text(reduced_margin(result, i))};
    if (const PartMargin* part = worst_part(result, i))
    {
      const StrengthPlace& worst = strength_of(result, i, *part).worst;
      const Eigen::Vector3d at = place_of(result.model, {.part = part->part, .node = static_cast<int>(worst.node)});
      row.insert(row.end(),
                 {part->name, millimetres_text(at.x(), 0), millimetres_text(at.y(), 0), millimetres_text(at.z(), 0),
                  message(ply_words(worst), ", ", words(worst.mode)), factors_text(part->knock_downs)});
    }
    table.add(std::move(row));
  }
  return table.text();
}

/// Margins of all parts under all loads, those after knock-downs in brackets.
std::string parts_text(const BodyLoadResult& result)
{
  std::vector<std::string> heads = {"<margin (reduced)"};
  for (const BodyLoadCase& load : result.study.cases)
    heads.push_back(load.name);
  TextTable table(heads);
  for (std::size_t part = 0; part < result.margins.front().size(); ++part)
  {
    std::vector<std::string> row = {result.margins.front()[part].name};
    for (std::size_t i = 0; i < result.margins.size(); ++i)
    {
      const PartMargin& entry = result.margins[i][part];
      const double margin = strength_of(result, i, entry).margin;
      row.push_back(message(margin_text(margin), " (", margin_text(reduced(margin, entry.knock_downs)), ")"));
    }
    table.add(std::move(row));
  }
  return table.text();
}

std::string stability_text(const BodyLoadStudy& study)
{
  const Eigen::VectorXd& factors = study.buckling.factors;
  std::string out = factors.size() == 0
                        ? std::string("  the string load does not make the body buckle\n")
                        : message("  buckling at ", margin_text(factors(0)), " times the string load\n");
  out += "  modes with the air, without -> with strings:";
  for (Eigen::Index i = 0; i < study.frequencies_hz.size(); ++i)
    out += message(i == 0 ? " " : ", ", fixed(study.frequencies_hz(i), 1), " -> ",
                   study.loaded_frequencies_hz.size() > 0 ? fixed(study.loaded_frequencies_hz(i), 1) : "-");
  out += " Hz\n";
  Evidence evidence;
  for (const BodyLoadCase& load : study.cases)
    evidence.add(load.evidence, load.balance_error);
  return out + evidence.text("forces and moments left over");
}

std::string design_text(const BodyLoadResult& result, bool timing)
{
  std::string out = head_text(result) + '\n' + cases_text(result) + '\n' + parts_text(result) + '\n' +
                    stability_text(result.study) + '\n' + strengths_text(models_of(result.model)) + '\n';
  if (timing)
    out += message("seconds: ", fixed(result.seconds, 2), "\n\n");
  return out;
}

std::string comparison_text(const BodyLoadResult& result, const BodyLoadResult& reference)
{
  return message("here: ", result.design.title, "\nref.: ", reference.design.title, "\n\n",
                 comparison_text(shared_cases(result, reference), result.study.buckling.factors,
                                 reference.study.buckling.factors));
}

} // namespace

std::string load_text(const BodyLoadOutcome& outcome, bool timing)
{
  std::string out = design_text(outcome.design, timing);
  if (outcome.reference)
    out += design_text(*outcome.reference, timing) + comparison_text(outcome.design, *outcome.reference);
  for (const BodyLoadCase& load : outcome.design.study.cases)
    out += case_words(load) + '\n';
  out += '\n' + knock_downs_text(outcome.design.load.knock_downs);
  for (const std::string_view note : body_load_notes())
    out += message(note, '\n');
  for (const std::string_view caution : load_cautions())
    out += message(caution, '\n');
  return out;
}

std::string load_csv(const BodyLoadOutcome& outcome)
{
  std::string out = csv_line({"design", "case", "force_n", "part", "margin", "reduced_margin", "x_mm", "y_mm", "z_mm",
                              "ply", "material", "gives_way"});
  const auto add = [&](const BodyLoadResult& result)
  {
    const auto number = [](double value) { return std::isfinite(value) ? compact(value) : std::string(); };
    for (std::size_t i = 0; i < result.study.cases.size(); ++i)
      for (const PartMargin& part : result.margins[i])
      {
        const BodyLoadCase& load = result.study.cases[i];
        const StrengthMap& strength = strength_of(result, i, part);
        const StrengthPlace& worst = strength.worst;
        const Eigen::Vector3d at =
            millimetres * place_of(result.model, {.part = part.part, .node = static_cast<int>(worst.node)});
        out += csv_line({result.design.title, load.name, compact(load.force), part.name, number(strength.margin),
                         number(reduced(strength.margin, part.knock_downs)), compact(at.x()), compact(at.y()),
                         compact(at.z()), std::to_string(worst.ply),
                         worst.material == nullptr ? "" : worst.material->name, std::string(words(worst.mode))});
      }
  };
  add(outcome.design);
  if (outcome.reference)
    add(*outcome.reference);
  return out;
}

} // namespace plate
