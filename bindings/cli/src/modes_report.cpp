// SPDX-License-Identifier: MPL-2.0
#include "modes_report.h"

#include "fits_report.h"
#include "json_text.h"
#include "pair_modes.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>
#include <plate/meshes/picture.h>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;

Eigen::Index num_modes(const ModesResult& result)
{
  return result.modal.frequencies_hz.size();
}

double frequency_hz(const ModesResult& result, std::size_t mode)
{
  return result.modal.frequencies_hz[static_cast<Eigen::Index>(mode)];
}

const std::string& name_of(const ModesResult& result, Eigen::Index mode)
{
  return result.names[static_cast<std::size_t>(mode)];
}

std::string seconds_text(const StageTimes& times)
{
  return message("seconds: mesh ", fixed(times.mesh, 2), ", assemble ", fixed(times.assemble, 2), ", solve ",
                 fixed(times.solve, 2), ", errors ", fixed(times.errors, 2), ", total ", fixed(times.total, 2), "\n");
}

Json seconds_json(const StageTimes& times)
{
  return {{"mesh", times.mesh},
          {"assemble", times.assemble},
          {"solve", times.solve},
          {"errors", times.errors},
          {"total", times.total}};
}

/// An error bar to three digits, rounded up. It is an estimate: further digits say nothing, and would show the rounding
/// errors of the solver, which depend on the number of threads.
double rounded_bar(double error_hz)
{
  if (!(error_hz > 0.0))
    return 0.0;
  const double unit = std::pow(10.0, std::floor(std::log10(error_hz)) - 2.0);
  return rounded(std::ceil(error_hz / unit) * unit);
}

bool in_air(const ModesResult& result)
{
  return result.model.air_density > 0.0;
}

std::string air_text(const ModesResult& result)
{
  if (!in_air(result))
    return {};
  const Eigen::ArrayXd drop = 1.0 - result.modal.frequencies_hz.array() / result.modal.vacuum_frequencies_hz.array();
  return message("  in air of ", fixed(result.model.air_density, 3), " kg/m3, ", fixed(drop.minCoeff() * percent, 1),
                 " to ", fixed(drop.maxCoeff() * percent, 1), " % below the frequencies in vacuo\n");
}

/// An error bar, rounded up to the last of two decimals: never shown smaller than it is.
std::string error_text(double error_hz)
{
  return fixed(std::ceil(error_hz * 100.0) / 100.0, 2);
}

/// What was done for the accuracy asked for; nothing if none was.
std::string refinement_text(const ModesResult& result)
{
  std::string out;
  for (const RefinementStep& step : result.refinement)
    out += message("  mesh size ", fixed(step.size * millimetres, 2), " mm: ", step.unknowns,
                   " unknowns, greatest error bar ", fixed(step.greatest_error * percent, 4), " %\n");
  if (!result.accurate)
    out +=
        "  the accuracy asked for is not reached: the next mesh would have more unknowns than --most-unknowns allows, "
        "or take more memory than there is\n";
  return out;
}

Json refinement_json(const ModesResult& result)
{
  Json steps = Json::array();
  for (const RefinementStep& step : result.refinement)
    steps.push_back({{"size_mm", rounded(step.size * millimetres)},
                     {"unknowns", step.unknowns},
                     {"greatest_error_percent", rounded_bar(step.greatest_error * percent)}});
  return {{"reached", result.accurate}, {"meshes", steps}};
}

/// Everything about one design.
std::string design_text(const ModesResult& result, bool timing)
{
  const Eigen::Vector3d& centre = result.system.centre_of_gravity;
  std::string out = result.design.title + "\n";
  out += message("  mass ", fixed(result.system.mass * grams, 1), " g, centre of gravity at x ",
                 fixed(centre.x() * millimetres, 1), " mm, y ", fixed(centre.y() * millimetres, 1), " mm\n");
  out += message("  ", result.modal.rigid_frequencies_hz.size(), " rigid modes left out; ", result.mesh.num_triangles,
                 " elements, ", result.system.dofs.num_equations, " unknowns\n");
  out += air_text(result);
  out += refinement_text(result);
  out += message(fits_text(result.design.fits), '\n');
  TextTable table({"mode", "Hz", "± Hz", "loss %", "<name"});
  for (Eigen::Index mode = 0; mode < num_modes(result); ++mode)
    table.add({std::to_string(mode + 1), fixed(result.modal.frequencies_hz[mode], 2),
               error_text(result.errors_hz[mode]), fixed(result.losses[mode] * percent, 2),
               trade_name(name_of(result, mode))});
  out += table.text() + '\n';
  if (timing)
    out += seconds_text(result.times);
  return out;
}

std::string pairs_text(const ModesResult& first, const ModesResult& second)
{
  TextTable table({"mode", "beside", "Hz", "Hz", "%", "cents", "<name"});
  for (const ModePair& pair : pair_modes(first.names, second.names))
  {
    const double from = frequency_hz(first, pair.first);
    const double to = frequency_hz(second, pair.second);
    const FrequencyDifference difference = frequency_difference(from, to);
    const std::string& name = first.names[pair.first];
    table.add({std::to_string(pair.first + 1), std::to_string(pair.second + 1), fixed(from, 2), fixed(to, 2),
               fixed(difference.percent, 1), fixed(difference.cents, 0),
               name == second.names[pair.second] ? trade_name(name) : ""});
  }
  return message("difference of ", second.design.title, "\n  from ", first.design.title, "\n\n", table.text(), '\n');
}

Json pairs_json(const ModesResult& first, const ModesResult& second)
{
  Json pairs = Json::array();
  for (const ModePair& pair : pair_modes(first.names, second.names))
  {
    const FrequencyDifference difference =
        frequency_difference(frequency_hz(first, pair.first), frequency_hz(second, pair.second));
    pairs.push_back({{"mode", pair.first + 1},
                     {"beside_mode", pair.second + 1},
                     {"difference_percent", rounded(difference.percent)},
                     {"cents", rounded(difference.cents)}});
  }
  return pairs;
}

Json design_json(const ModesResult& result, bool timing)
{
  const Eigen::Vector3d centre = result.system.centre_of_gravity * millimetres;
  Json modes = Json::array();
  for (Eigen::Index mode = 0; mode < num_modes(result); ++mode)
    modes.push_back(mode_json(result, mode));
  const Eigen::VectorXd& rigid = result.modal.rigid_frequencies_hz;
  Json json = {{"title", result.design.title},
               {"mass_g", rounded(result.system.mass * grams)},
               {"centre_of_gravity_mm", {rounded(centre.x()), rounded(centre.y()), rounded(centre.z())}},
               {"rigid_modes", rigid.size()},
               {"unknowns", result.system.dofs.num_equations},
               {"nodes", result.mesh.num_nodes},
               {"elements", result.mesh.num_triangles},
               {"in_air", in_air(result)},
               {"modes", modes},
               {"fits", fits_json(result.design.fits)},
               {"caution", caution}};
  if (!result.refinement.empty())
    json["accuracy"] = refinement_json(result);
  if (timing)
    json["seconds"] = seconds_json(result.times);
  return json;
}

} // namespace

Json mode_json(const ModesResult& result, Eigen::Index mode)
{
  Json json = {{"number", mode + 1},
               {"frequency_hz", rounded(result.modal.frequencies_hz[mode])},
               {"error_hz", rounded_bar(result.errors_hz[mode])},
               {"name", name_of(result, mode)},
               {"loss_percent", rounded(result.losses[mode] * percent)}};
  if (in_air(result))
    json["vacuum_frequency_hz"] = rounded(result.modal.vacuum_frequencies_hz[mode]);
  return json;
}

std::string modes_text(const ModesOutcome& outcome, bool timing)
{
  std::string out = design_text(outcome.design, timing);
  if (outcome.beside)
    out += design_text(*outcome.beside, timing) + pairs_text(outcome.design, *outcome.beside);
  return message(out, caution, '\n');
}

std::string modes_json(const ModesOutcome& outcome, bool timing)
{
  Json json = design_json(outcome.design, timing);
  if (outcome.beside)
  {
    json["beside"] = design_json(*outcome.beside, timing);
    json["pairs"] = pairs_json(outcome.design, *outcome.beside);
  }
  return json_text(json);
}

std::string modes_csv(const ModesResult& result)
{
  std::vector<std::string> heads = {"number", "frequency_hz", "error_hz", "name", "loss_percent"};
  if (in_air(result))
    heads.emplace_back("vacuum_frequency_hz");
  std::string out = csv_line(heads);
  for (Eigen::Index mode = 0; mode < num_modes(result); ++mode)
  {
    std::vector<std::string> row = {std::to_string(mode + 1), compact(result.modal.frequencies_hz[mode]),
                                    compact(rounded_bar(result.errors_hz[mode])), name_of(result, mode),
                                    compact(result.losses[mode] * percent)};
    if (in_air(result))
      row.push_back(compact(result.modal.vacuum_frequencies_hz[mode]));
    out += csv_line(row);
  }
  return out;
}

} // namespace plate
