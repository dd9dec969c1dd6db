// SPDX-License-Identifier: MPL-2.0
#include "pair_measured.h"

#include "measured_unit.h"
#include "pair_modes.h"

#include <plate/core/error.h>
#include <plate/post/measured_shape.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

namespace plate
{
namespace
{

/// Names that name_modes() gives.
bool is_trade_name(const std::string& name)
{
  return name == "M1" || name == "M2" || name == "M5";
}

/// Likeness of each measured mode to each of the design.
struct MeasuredAssurance
{
  Eigen::MatrixXd values;
  double share_left_out; ///< of all places
};

MeasuredAssurance measured_assurance(const MeasuredModes& measured, const ModesResult& modes)
{
  Eigen::MatrixXd values(static_cast<Eigen::Index>(measured.modes.size()), modes.normal_shapes.cols());
  double num_places = 0.0;
  double num_on_plate = 0.0;
  for (std::size_t i = 0; i < measured.modes.size(); ++i)
  {
    const MeasuredMode& mode = measured.modes[i];
    const MeasuredLikeness likeness =
        measured_likeness(modes.model.mesh, modes.normal_shapes, {mode.places, mode.displacement});
    if (likeness.num_places < fewest_measured_places)
      throw InvalidInput(message(measured.title, ": mode ", mode.number, ": ", likeness.num_places, " of ",
                                 mode.places.size(), " points lie on ", modes.design.title, "; at least ",
                                 fewest_measured_places,
                                 " must; x and y are in mm from the middle of the plate, x towards the neck"));
    values.row(static_cast<Eigen::Index>(i)) = likeness.assurance;
    num_places += static_cast<double>(mode.places.size());
    num_on_plate += likeness.num_places;
  }
  return {.values = std::move(values), .share_left_out = 1.0 - num_on_plate / num_places};
}

/// What a mode of the design loses in likeness for lying far from a measured one in frequency.
///
/// A few places cannot tell a shape from one with many more nodal lines; by then the frequency is octaves away.
Eigen::MatrixXd distances(const MeasuredModes& measured, const ModesResult& modes)
{
  constexpr double per_octave = 0.1;
  Eigen::MatrixXd out(static_cast<Eigen::Index>(measured.modes.size()), modes.modal.frequencies_hz.size());
  for (std::size_t i = 0; i < measured.modes.size(); ++i)
    out.row(static_cast<Eigen::Index>(i)) =
        per_octave * (modes.modal.frequencies_hz.array() / measured.modes[i].frequency_hz).log().abs().transpose() /
        std::numbers::ln2;
  return out;
}

void pair_by_likeness(const MeasuredModes& measured, const ModesResult& modes, PairedModes& out)
{
  MeasuredAssurance likeness = measured_assurance(measured, modes);
  const std::vector<int> partner = best_assignment(likeness.values - distances(measured, modes));
  for (std::size_t i = 0; i < partner.size(); ++i)
  {
    const double assurance = likeness.values(static_cast<Eigen::Index>(i), partner[i]);
    if (assurance < PairingOptions().least_assurance)
      out.unpaired.push_back(i);
    else
      out.pairs.push_back({.reference = i,
                           .mode = static_cast<std::size_t>(partner[i]),
                           .assurance = assurance,
                           .group_assurance = {}});
  }
  out.assurance = std::move(likeness.values);
  out.share_left_out = likeness.share_left_out;
}

void pair_by_name_and_order(const MeasuredModes& measured, const std::vector<std::string>& names, PairedModes& out)
{
  // All modes up to the last measured one, those that were not found without a name.
  std::vector<std::string> dense(static_cast<std::size_t>(measured.modes.back().number));
  for (const MeasuredMode& mode : measured.modes)
    dense[static_cast<std::size_t>(mode.number) - 1] = mode.name;
  const std::vector<ModePair> pairs = pair_modes(dense, names);
  for (std::size_t i = 0; i < measured.modes.size(); ++i)
  {
    const auto pair = std::find_if(pairs.begin(), pairs.end(),
                                   [&](const ModePair& p)
                                   { return p.first + 1 == static_cast<std::size_t>(measured.modes[i].number); });
    const std::string& name = measured.modes[i].name;
    if (pair == pairs.end() || (is_trade_name(name) && names[pair->second] != name))
      out.unpaired.push_back(i);
    else
      out.pairs.push_back({.reference = i, .mode = pair->second});
  }
}

/// Frequencies of the list over those of the design, number by number.
std::vector<double> frequency_ratios(const MeasuredModes& measured, const ModesResult& modes)
{
  std::vector<double> ratios;
  for (const MeasuredMode& mode : measured.modes)
    ratios.push_back(mode.frequency_hz / modes.modal.frequencies_hz[mode.number - 1]);
  return ratios;
}

} // namespace

PairedModes pair_measured(const MeasuredModes& measured, const ModesResult& modes)
{
  check_measured_unit(measured.title, modes.design.title, frequency_ratios(measured, modes));
  PairedModes out;
  if (measured.with_shapes)
    pair_by_likeness(measured, modes, out);
  else
    pair_by_name_and_order(measured, modes.names, out);
  return out;
}

} // namespace plate
