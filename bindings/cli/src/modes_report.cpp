// SPDX-License-Identifier: MPL-2.0
#include "modes_report.h"

#include "text_table.h"

#include <plate/core/error.h>
#include <plate/meshes/picture.h>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstddef>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;

constexpr double grams = 1e3;       // per kg
constexpr double millimetres = 1e3; // per m
constexpr double percent = 100.0;

Eigen::Index num_modes(const ModesResult& result)
{
  return result.modal.frequencies_hz.size();
}

const std::string& name_of(const ModesResult& result, Eigen::Index mode)
{
  return result.names[static_cast<std::size_t>(mode)];
}

std::string seconds_text(const StageTimes& times)
{
  return message("seconds: mesh ", fixed(times.mesh, 2), ", assemble ", fixed(times.assemble, 2), ", solve ",
                 fixed(times.solve, 2), ", total ", fixed(times.total, 2), "\n");
}

Json seconds_json(const StageTimes& times)
{
  return {{"mesh", times.mesh}, {"assemble", times.assemble}, {"solve", times.solve}, {"total", times.total}};
}

Json mode_json(const ModesResult& result, Eigen::Index mode)
{
  return {{"number", mode + 1},
          {"frequency_hz", rounded(result.modal.frequencies_hz[mode])},
          {"name", name_of(result, mode)},
          {"loss_percent", rounded(result.losses[mode] * percent)}};
}

} // namespace

std::string modes_text(const ModesResult& result, bool timing)
{
  const Eigen::Vector3d& centre = result.system.centre_of_gravity;
  std::string out = result.design.title + "\n";
  out += message("  mass ", fixed(result.system.mass * grams, 1), " g, centre of gravity at x ",
                 fixed(centre.x() * millimetres, 1), " mm, y ", fixed(centre.y() * millimetres, 1), " mm\n");
  out += message("  ", result.modal.rigid_frequencies_hz.size(), " rigid modes left out; ", result.mesh.num_triangles,
                 " elements, ", result.system.dofs.num_equations, " unknowns\n\n");
  TextTable table({"mode", "Hz", "loss %", "<name"});
  for (Eigen::Index mode = 0; mode < num_modes(result); ++mode)
    table.add({std::to_string(mode + 1), fixed(result.modal.frequencies_hz[mode], 2),
               fixed(result.losses[mode] * percent, 2), trade_name(name_of(result, mode))});
  out += table.text() + '\n';
  if (timing)
    out += seconds_text(result.times);
  return message(out, caution, '\n');
}

std::string modes_json(const ModesResult& result, bool timing)
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
               {"modes", modes},
               {"caution", caution}};
  if (timing)
    json["seconds"] = seconds_json(result.times);
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

std::string modes_csv(const ModesResult& result)
{
  std::string out = csv_line({"number", "frequency_hz", "name", "loss_percent"});
  for (Eigen::Index mode = 0; mode < num_modes(result); ++mode)
    out += csv_line({std::to_string(mode + 1), compact(result.modal.frequencies_hz[mode]), name_of(result, mode),
                     compact(result.losses[mode] * percent)});
  return out;
}

} // namespace plate
