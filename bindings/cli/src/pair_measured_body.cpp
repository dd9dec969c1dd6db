// SPDX-License-Identifier: MPL-2.0
#include "pair_measured.h"

#include "measured_unit.h"

#include <plate/core/error.h>
#include <plate/post/body_mode_names.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace plate
{
namespace
{

/// Further apart, two modes without a common name are no pair [octaves].
constexpr double most_apart = 1.0 / 3.0;

double octaves(double from_hz, double to_hz)
{
  return std::abs(std::log2(to_hz / from_hz));
}

std::optional<std::size_t> mode_named(const std::string& name, const std::vector<ComparedMode>& modes)
{
  const auto found =
      std::find_if(modes.begin(), modes.end(), [&](const ComparedMode& mode) { return mode.name == name; });
  if (name.empty() || found == modes.end())
    return {};
  return static_cast<std::size_t>(found - modes.begin());
}

/// Which modes of the list and of the body have found their partner by name, and which still look for one.
struct Named
{
  std::vector<std::optional<std::size_t>> partner; ///< of each measured mode
  std::vector<std::size_t> measured_left;
  std::vector<std::size_t> computed_left;
};

Named paired_by_name(const MeasuredModes& measured, const std::vector<ComparedMode>& modes)
{
  Named out;
  std::vector<bool> taken(modes.size(), false);
  for (std::size_t i = 0; i < measured.modes.size(); ++i)
  {
    const std::string& name = measured.modes[i].name;
    out.partner.push_back(mode_named(name, modes));
    if (out.partner.back())
      taken[*out.partner.back()] = true;
    else if (!is_body_mode_name(name))
      out.measured_left.push_back(i);
  }
  for (std::size_t j = 0; j < modes.size(); ++j)
    if (!taken[j])
      out.computed_left.push_back(j);
  return out;
}

void pair_by_frequency(const MeasuredModes& measured, const std::vector<ComparedMode>& modes, Named& named)
{
  Eigen::MatrixXd score(static_cast<Eigen::Index>(named.measured_left.size()),
                        static_cast<Eigen::Index>(named.computed_left.size()));
  for (Eigen::Index i = 0; i < score.rows(); ++i)
    for (Eigen::Index j = 0; j < score.cols(); ++j)
      score(i, j) = -octaves(measured.modes[named.measured_left[static_cast<std::size_t>(i)]].frequency_hz,
                             modes[named.computed_left[static_cast<std::size_t>(j)]].frequency_hz);
  const std::vector<int> assigned = best_assignment(score);
  for (std::size_t i = 0; i < assigned.size(); ++i)
    if (score(static_cast<Eigen::Index>(i), assigned[i]) > -most_apart)
      named.partner[named.measured_left[i]] = named.computed_left[static_cast<std::size_t>(assigned[i])];
}

/// Frequencies of the list over those of the body, of the modes that share a name, or else number by number.
std::vector<double> frequency_ratios(const MeasuredModes& measured, const std::vector<ComparedMode>& modes,
                                     const Named& named)
{
  std::vector<double> shared;
  std::vector<double> by_number;
  for (std::size_t i = 0; i < measured.modes.size(); ++i)
  {
    const MeasuredMode& mode = measured.modes[i];
    by_number.push_back(mode.frequency_hz / modes[static_cast<std::size_t>(mode.number) - 1].frequency_hz);
    if (named.partner[i])
      shared.push_back(mode.frequency_hz / modes[*named.partner[i]].frequency_hz);
  }
  return shared.empty() ? by_number : shared;
}

} // namespace

PairedModes pair_measured_body(const MeasuredModes& measured, const Compared& body)
{
  if (measured.with_shapes)
    throw InvalidInput(message(measured.title, ": its modes have points, which are places on one plate; ", body.title,
                               " is a body: leave points out, modes are then paired by name and frequency"));
  Named named = paired_by_name(measured, body.modes);
  check_measured_unit(measured.title, body.title, frequency_ratios(measured, body.modes, named));
  pair_by_frequency(measured, body.modes, named);
  PairedModes out;
  for (std::size_t i = 0; i < named.partner.size(); ++i)
    if (named.partner[i])
      out.pairs.push_back({.reference = i, .mode = *named.partner[i]});
    else
      out.unpaired.push_back(i);
  return out;
}

} // namespace plate
