// SPDX-License-Identifier: MPL-2.0
#include "sweep_report.h"

#include "json_text.h"
#include "modes_report.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

#include <nlohmann/json.hpp>

#include <cstddef>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;

std::size_t num_finished(const SweepOutcome& sweep)
{
  return sweep.result.mass.size();
}

std::string name_of(const ModeTrack& track)
{
  return track.name.empty() ? message("mode ", track.mode.front()) : track.name;
}

/// NaN turns into null.
Json numbers(const std::vector<double>& values)
{
  Json out = Json::array();
  for (const double value : values)
    out.push_back(rounded(value));
  return out;
}

std::string key_with_unit(const SweepOutcome& sweep, std::size_t key)
{
  return sweep.units[key].empty() ? sweep.keys[key] : message(sweep.keys[key], " ", sweep.units[key]);
}

Json track_json(const ModeTrack& track)
{
  return {{"name", name_of(track)},
          {"frequency_hz", numbers(track.frequency_hz)},
          {"mode", track.mode},
          {"likeness", numbers(track.likeness)}};
}

} // namespace

std::string sweep_text(const SweepOutcome& sweep, bool timing)
{
  std::vector<std::string> heads;
  for (std::size_t key = 0; key < sweep.keys.size(); ++key)
    heads.push_back(key_with_unit(sweep, key));
  heads.emplace_back("mass g");
  for (const ModeTrack& track : sweep.result.tracks)
    heads.push_back(name_of(track));
  TextTable table(heads);
  bool lost = false;
  for (std::size_t point = 0; point < num_finished(sweep); ++point)
  {
    std::vector<std::string> row;
    for (const double value : sweep.points[point])
      row.push_back(compact(value));
    row.push_back(fixed(sweep.result.mass[point] * grams, 1));
    for (const ModeTrack& track : sweep.result.tracks)
    {
      const std::string frequency = fixed(track.frequency_hz[point], 1);
      lost = lost || frequency.empty();
      row.push_back(frequency.empty() ? "-" : frequency);
    }
    table.add(row);
  }
  std::string out =
      message(sweep.title, "\n  frequencies in Hz", sweep.in_air ? ", in air," : "",
              " of modes followed by their shape, named as at the first ", "point\n\n", table.text(), "\n");
  if (lost)
    out += "  - : the mode left the range solved for; a greater --count follows it further\n";
  if (!sweep.result.complete)
    out += message("  interrupted after ", num_finished(sweep), " of ", sweep.points.size(), " points\n");
  if (sweep.result.num_reduced > 0)
    out += message("  ", sweep.result.num_reduced, " points from a reduced model, within ",
                   compact(percent * sweep.result.reduced_error, 2), " % of full solves (--full solves each)\n");
  if (timing)
    out += message("seconds: total ", fixed(sweep.seconds, 2), ", ", sweep.result.num_solved, " eigenproblems\n");
  return message(out, caution, '\n');
}

std::string sweep_json(const SweepOutcome& sweep, bool timing)
{
  Json values = Json::array();
  Json mass = Json::array();
  for (std::size_t point = 0; point < num_finished(sweep); ++point)
  {
    values.push_back(numbers(sweep.points[point]));
    mass.push_back(rounded(sweep.result.mass[point] * grams));
  }
  Json tracks = Json::array();
  for (const ModeTrack& track : sweep.result.tracks)
    tracks.push_back(track_json(track));
  Json json = {{"title", sweep.title},
               {"keys", sweep.keys},
               {"units", sweep.units},
               {"values", values},
               {"mass_g", mass},
               {"tracks", tracks},
               {"in_air", sweep.in_air},
               {"complete", sweep.result.complete},
               {"remeshed_points", sweep.num_remeshed},
               {"reduced_points", sweep.result.num_reduced},
               {"reduced_error_percent", rounded(percent * sweep.result.reduced_error)},
               {"caution", caution}};
  if (timing)
    json["seconds"] = {{"total", sweep.seconds}};
  return json_text(json);
}

std::string sweep_csv(const SweepOutcome& sweep)
{
  std::vector<std::string> heads;
  for (std::size_t key = 0; key < sweep.keys.size(); ++key)
    heads.push_back(key_with_unit(sweep, key));
  heads.emplace_back("mass_g");
  for (const ModeTrack& track : sweep.result.tracks)
    heads.push_back(name_of(track) + " frequency_hz");
  std::string out = csv_line(heads);
  for (std::size_t point = 0; point < num_finished(sweep); ++point)
  {
    std::vector<std::string> row;
    for (const double value : sweep.points[point])
      row.push_back(compact(value));
    row.push_back(compact(sweep.result.mass[point] * grams));
    for (const ModeTrack& track : sweep.result.tracks)
      row.push_back(compact(track.frequency_hz[point]));
    out += csv_line(row);
  }
  return out;
}

} // namespace plate
