// SPDX-License-Identifier: MPL-2.0
#include "sweep_report.h"

#include "text_table.h"

#include <plate/core/error.h>
#include <plate/meshes/sweep_picture.h>

#include <algorithm>
#include <cstddef>

namespace plate
{
namespace
{

std::vector<double> column(const Eigen::MatrixXd& matrix, std::size_t index)
{
  const auto col = matrix.col(static_cast<Eigen::Index>(index));
  return {col.begin(), col.end()};
}

std::vector<double> part(const std::vector<double>& values, std::size_t first, std::size_t count)
{
  const auto begin = values.begin() + static_cast<std::ptrdiff_t>(first);
  return {begin, begin + static_cast<std::ptrdiff_t>(count)};
}

/// Curves over one row of the grid, points first to first + count.
SweepCurves row_curves(const SweepOutcome& sweep, std::size_t first, std::size_t count)
{
  const std::string& unit = sweep.units.back();
  SweepCurves curves{.title = sweep.title,
                     .key = unit.empty() ? sweep.keys.back() : sweep.keys.back() + ", " + unit,
                     .values = {},
                     .tracks = {},
                     .mass = part(sweep.result.mass, first, count)};
  if (sweep.keys.size() > 1)
    curves.title +=
        message("; ", sweep.keys.front(), " = ", compact(sweep.points[first].front()), " ", sweep.units.front());
  for (std::size_t point = first; point < first + count; ++point)
    curves.values.push_back(sweep.points[point].back());
  for (const ModeTrack& track : sweep.result.tracks)
    curves.tracks.push_back({.name = track.name.empty() ? message("mode ", track.mode.front()) : track.name,
                             .emphasised = !track.name.empty(),
                             .frequency_hz = part(track.frequency_hz, first, count),
                             .first_shape = {},
                             .last_shape = {}});
  return curves;
}

/// Mode pictures at the ends; the last ones only if they live on the same mesh.
void add_shapes(const SweepOutcome& sweep, SweepCurves& curves)
{
  const SweepShapes& first = sweep.result.first;
  const SweepShapes& last = sweep.result.last;
  for (std::size_t track = 0; track < curves.tracks.size(); ++track)
  {
    curves.tracks[track].first_shape = column(first.normal_displacement, track);
    if (last.mesh.triangles == first.mesh.triangles)
      curves.tracks[track].last_shape = column(last.normal_displacement, track);
  }
}

void write_picture(const OutputFolder& folder, const SweepOutcome& sweep, const std::string& name,
                   const SweepCurves& curves)
{
  const PlateView view{.mesh = sweep.result.first.mesh, .title = sweep.title};
  for (const char* ending : {".svg", ".png"})
    write_sweep_picture(folder.file(name + ending), view, curves);
}

} // namespace

void write_sweep_files(const OutputFolder& folder, const SweepOutcome& sweep, bool timing)
{
  folder.write("sweep.json", sweep_json(sweep, timing));
  folder.write("sweep.csv", sweep_csv(sweep));
  const std::size_t finished = sweep.result.mass.size();
  for (std::size_t first = 0; first < finished; first += sweep.row)
  {
    const std::size_t count = std::min(sweep.row, finished - first);
    if (count < 2) // one point is no curve
      continue;
    SweepCurves curves = row_curves(sweep, first, count);
    if (sweep.keys.size() == 1)
      add_shapes(sweep, curves);
    const std::string number = std::to_string(first / sweep.row + 1);
    write_picture(folder, sweep, sweep.keys.size() == 1 ? "sweep" : "sweep_" + number, curves);
  }
}

} // namespace plate
