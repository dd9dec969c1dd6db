// SPDX-License-Identifier: MPL-2.0
#include "body_report.h"

#include "body_comparison.h"
#include "json_text.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <nlohmann/json.hpp>

#include <array>
#include <cstddef>
#include <string_view>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;

constexpr std::array<std::string_view, 5> cautions = {
    "Names follow shape and air share; of A1, CBR, B1- and B1+ several modes may share the character.",
    "Radiation counts the body as a small source: right below about 300 Hz for a body of a viola's size, too much loss "
    "above.",
    "Mesh: at the default mesh.size the ten lowest modes of the demo body are within 0.5 % of those at 14 mm.",
    "Friction in the soundholes is assumed.", "A prediction does not replace a measurement."};

/// All cautions, with something between.
std::string cautions_text(char between)
{
  std::string out;
  for (const std::string_view caution : cautions)
    out += message(out.empty() ? "" : std::string(1, between), caution);
  return out;
}

std::string mode_name(const BodyResult& result, std::size_t mode)
{
  const std::optional<BodyModeName> name = name_of(result, mode);
  return name ? name->name : std::string();
}

double at(const Eigen::VectorXd& values, std::size_t mode)
{
  return values(static_cast<Eigen::Index>(mode));
}

TextTable mode_table(const BodyResult& result)
{
  const CoupledModes& modes = result.modes.coupled;
  std::vector<std::string> heads = {"mode", "Hz", "loss %"};
  for (const std::string& name : modes.share_names)
    heads.push_back(name + " %");
  heads.insert(heads.end(), {"<name", "sure %"});
  TextTable table(heads);
  const Eigen::VectorXd loss = modes.loss();
  for (std::size_t i = 0; i < result.traits.size(); ++i)
  {
    std::vector<std::string> row = {std::to_string(i + 1), fixed(result.traits[i].frequency_hz, 2),
                                    fixed(at(loss, i) * percent, 2)};
    for (std::size_t part = 0; part < modes.share_names.size(); ++part)
      row.push_back(fixed(energy_share(modes, part, i) * percent, 1));
    const std::optional<BodyModeName> name = name_of(result, i);
    row.push_back(name ? name->name : "");
    row.push_back(name ? fixed(name->certainty * percent, 0) : "");
    table.add(std::move(row));
  }
  return table;
}

Json seconds_json(const BodyTimes& times)
{
  return {{"mesh", times.mesh}, {"assemble", times.assemble}, {"solve", times.solve}, {"total", times.total}};
}

std::string result_text(const BodyResult& result, bool timing)
{
  const BodyModes& modes = result.modes;
  const Eigen::Vector3d& centre = result.system.system.centre_of_gravity;
  std::string out = message(
      result.design.title, "\n  mass ", fixed(result.system.system.mass * grams, 1), " g, balance point at x ",
      fixed(centre.x() * millimetres, 1), " mm, y ", fixed(centre.y() * millimetres, 1), " mm\n  air ",
      fixed(modes.volume * litres, 3), " l, conductance of the soundholes ", fixed(modes.conductance * millimetres, 1),
      " mm; between rigid walls the air has ", fixed(modes.rigid_walls_hz(0), 1), " Hz and ",
      fixed(modes.rigid_walls_hz(1), 1), " Hz\n  ", result.system.system.dofs.num_equations, " unknowns, ",
      modes.structure.cols(), " motions of the body, ", modes.cavity_hz.size(), " modes of the air\n\n");
  out += mode_table(result).text() + '\n';
  if (timing)
    out += message("seconds: mesh ", fixed(result.times.mesh, 2), ", assemble ", fixed(result.times.assemble, 2),
                   ", solve ", fixed(result.times.solve, 2), ", total ", fixed(result.times.total, 2), "\n");
  return out;
}

Json result_json(const BodyResult& result, bool timing)
{
  const BodyModes& body = result.modes;
  const Eigen::Vector3d centre = result.system.system.centre_of_gravity * millimetres;
  Json modes = Json::array();
  for (std::size_t i = 0; i < result.traits.size(); ++i)
    modes.push_back(mode_json(result, i));
  Json json = {{"title", result.design.title},
               {"mass_g", rounded(result.system.system.mass * grams)},
               {"centre_of_gravity_mm", {rounded(centre.x()), rounded(centre.y()), rounded(centre.z())}},
               {"air_volume_l", rounded(body.volume * litres)},
               {"hole_conductance_mm", rounded(body.conductance * millimetres)},
               {"rigid_walls_hz", {rounded(body.rigid_walls_hz(0)), rounded(body.rigid_walls_hz(1))}},
               {"unknowns", result.system.system.dofs.num_equations},
               {"motions", body.structure.cols()},
               {"cavity_modes", body.cavity_hz.size()},
               {"modes", modes}};
  if (timing)
    json["seconds"] = seconds_json(result.times);
  return json;
}

} // namespace

Json mode_json(const BodyResult& result, std::size_t i)
{
  const CoupledModes& modes = result.modes.coupled;
  Json shares = Json::object();
  for (std::size_t part = 0; part < modes.share_names.size(); ++part)
    shares[modes.share_names[part]] = rounded(energy_share(modes, part, i));
  Json json = {{"number", i + 1},
               {"frequency_hz", rounded(result.traits[i].frequency_hz)},
               {"name", mode_name(result, i)},
               {"air_share", rounded(result.traits[i].air_share)},
               {"energy_shares", shares},
               {"loss_percent", rounded(at(modes.loss(), i) * percent)},
               {"radiation_loss_percent", rounded(at(modes.radiation_loss, i) * percent)},
               {"hole_loss_percent", rounded(at(modes.hole_loss, i) * percent)}};
  if (const std::optional<BodyModeName> name = name_of(result, i))
    json["certainty"] = rounded(name->certainty);
  return json;
}

std::string body_text(const BodyOutcome& outcome, bool timing)
{
  std::string out = result_text(outcome.body, timing);
  if (outcome.reference)
    out += result_text(*outcome.reference, timing) + comparison_text(outcome.body, *outcome.reference);
  return message(out, cautions_text('\n'), '\n');
}

std::string body_json(const BodyOutcome& outcome, bool timing)
{
  Json json = result_json(outcome.body, timing);
  if (outcome.reference)
  {
    json["reference"] = result_json(*outcome.reference, timing);
    json["beside_reference"] = comparison_json(outcome.body, *outcome.reference);
  }
  json["caution"] = cautions_text(' ');
  return json_text(json);
}

std::string body_csv(const BodyResult& result)
{
  const CoupledModes& modes = result.modes.coupled;
  std::vector<std::string> heads = {"number", "frequency_hz", "name", "air_share", "loss_percent"};
  for (const std::string& name : modes.share_names)
    heads.push_back("energy_" + name);
  std::string out = csv_line(heads);
  for (std::size_t i = 0; i < result.traits.size(); ++i)
  {
    std::vector<std::string> row = {std::to_string(i + 1), compact(result.traits[i].frequency_hz), mode_name(result, i),
                                    compact(result.traits[i].air_share), compact(at(modes.loss(), i) * percent)};
    for (std::size_t part = 0; part < modes.share_names.size(); ++part)
      row.push_back(compact(energy_share(modes, part, i)));
    out += csv_line(row);
  }
  return out;
}

} // namespace plate
