// SPDX-License-Identifier: MPL-2.0
#include "sweep_bodies.h"

#include "body_result.h"
#include "body_shapes.h"

#include <plate/design/body_design.h>
#include <plate/post/mode_compare.h>

#include <utility>

namespace plate
{
namespace
{

/// What following needs to know of one body.
struct PointOfSweep
{
  Eigen::VectorXd frequencies_hz;
  BodyShapes shapes;
  TrackedModes tracks;
};

BodyResult solve(BodyDocument document, const std::vector<std::string>& keys, const std::vector<double>& values,
                 int num_modes)
{
  for (std::size_t k = 0; k < keys.size(); ++k)
    document.set_number(keys[k], values[k]);
  return compute_body(document.design(), num_modes);
}

PointOfSweep point_of(const BodyResult& result)
{
  const auto count = static_cast<Eigen::Index>(result.traits.size());
  return {.frequencies_hz = result.modes.coupled.frequencies_hz.head(count),
          .shapes = body_shapes(result, count),
          .tracks = {}};
}

/// The top in the tracks of a point, for pictures.
SweepShapes top_shapes(const BodyResult& result, const TrackedModes& tracks)
{
  const Eigen::MatrixXd all = outward_shapes(result, BodyModel::top);
  Eigen::MatrixXd w = Eigen::MatrixXd::Zero(all.rows(), static_cast<Eigen::Index>(tracks.mode.size()));
  for (std::size_t t = 0; t < tracks.mode.size(); ++t)
    if (tracks.mode[t] >= 0)
      w.col(static_cast<Eigen::Index>(t)) = all.col(tracks.mode[t]);
  return {.mesh = result.model.body.parts[BodyModel::top].model.mesh, .normal_displacement = std::move(w)};
}

} // namespace

SweepResult sweep_bodies(const BodyDocument& document, const std::vector<std::string>& keys,
                         const std::vector<std::vector<double>>& points, std::size_t row, const SweepOptions& options)
{
  SweepResult out;
  out.tracks.resize(static_cast<std::size_t>(options.num_modes));
  PointOfSweep previous;
  PointOfSweep row_start;
  for (std::size_t i = 0; i < points.size() && options.progress(i, points.size()); ++i)
  {
    const BodyResult result = solve(document, keys, points[i], options.num_modes + options.num_spare);
    PointOfSweep point = point_of(result);
    if (i == 0)
    {
      point.tracks = first_modes(out.tracks.size());
      out.first = top_shapes(result, point.tracks);
      for (std::size_t t = 0; t < out.tracks.size(); ++t)
        if (const std::optional<BodyModeName> name = name_of(result, t))
          out.tracks[t].name = name->name;
    }
    else
    {
      const PointOfSweep& from = i % row == 0 ? row_start : previous;
      point.tracks = follow_modes(from.tracks, modal_assurance(shape_products(from.shapes, point.shapes)));
    }
    record_point(point.tracks, point.frequencies_hz, result.system.system.mass, out);
    out.last = top_shapes(result, point.tracks);
    ++out.num_solved;
    if (i % row == 0)
      row_start = point;
    previous = std::move(point);
    out.complete = i + 1 == points.size();
  }
  return out;
}

} // namespace plate
