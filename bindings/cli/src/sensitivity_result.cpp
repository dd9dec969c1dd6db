// SPDX-License-Identifier: MPL-2.0
#include "sensitivity_result.h"

#include "checked_design.h"
#include "stopwatch.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/design/design_model.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>
#include <utility>

namespace plate
{
namespace
{

/// The mode of a name or number.
Eigen::Index mode_of(const std::string& option, const std::string& word, const std::vector<std::string>& names)
{
  if (const auto named = std::find(names.begin(), names.end(), word); named != names.end() && !word.empty())
    return named - names.begin();
  std::size_t number = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), number);
  if (error == std::errc() && end == word.data() + word.size() && number >= 1 && number <= names.size())
    return static_cast<Eigen::Index>(number) - 1;
  std::string known;
  for (const std::string& name : names)
    known += name.empty() ? "" : ", " + name;
  throw UsageError(
      message(option, " ", word, ": no such mode; must be a number from 1 to ", names.size(), known, " (see --count)"));
}

/// M1, M2, M5, or else the first mode.
std::vector<Eigen::Index> usual_maps(const std::vector<std::string>& names)
{
  std::vector<Eigen::Index> modes;
  for (std::size_t i = 0; i < names.size(); ++i)
    if (!names[i].empty())
      modes.push_back(static_cast<Eigen::Index>(i));
  return modes.empty() ? std::vector<Eigen::Index>{0} : modes;
}

double greatest_cents(const DerivedKey& key, const Sensitivity& slopes, const Eigen::VectorXd& hz)
{
  constexpr double cents = 1200.0 / std::numbers::ln2;
  return cents * key.change * slopes.slopes_hz.cwiseQuotient(hz).cwiseAbs().maxCoeff();
}

std::vector<KeyEffect> effects_of(const std::vector<DerivedKey>& keys, const SensitivityResult& result, bool idle_too)
{
  std::vector<KeyEffect> effects;
  for (std::size_t k = 0; k < result.parameters.size(); ++k)
    if (const Sensitivity& slopes = result.parameters[k]; slopes.acts || idle_too)
      effects.push_back(
          {.key = keys[k], .slopes = slopes, .cents = greatest_cents(keys[k], slopes, result.modes.frequencies_hz)});
  std::stable_sort(effects.begin(), effects.end(),
                   [](const KeyEffect& a, const KeyEffect& b) { return a.cents > b.cents; });
  return effects;
}

void add_maps(const SensitivityRequest& request, SensitivityOutcome& outcome)
{
  const SensitivityResult& result = outcome.result;
  for (const std::string& word : request.maps)
    outcome.maps.push_back(mode_of("--map", word, result.names));
  if (request.maps.empty())
    outcome.maps = usual_maps(result.names);
  if (!request.leave.empty())
    outcome.leave = mode_of("--leave", request.leave, result.names);
  outcome.thickness_slopes = thickness_slopes(result.model, result.system.dofs, result.modes);
}

} // namespace

SensitivityOutcome compute_sensitivity(const DesignDocument& document, const SensitivityRequest& request,
                                       const std::function<bool(std::size_t, std::size_t)>& begin_key)
{
  const Stopwatch whole;
  const DerivedKeys derived = derived_keys(document, request.keys);
  SensitivityOutcome outcome;
  outcome.title = checked_design(document, request.count).title;
  outcome.left_out = derived.left_out;
  std::vector<std::string> names;
  std::vector<SensitivityParameter> parameters;
  for (const DerivedKey& key : derived.keys)
  {
    names.push_back(key.key);
    parameters.push_back({.value = key.value, .scale = key.scale});
  }
  DesignModel design(document, std::move(names));
  outcome.result = sensitivities(design, parameters, {.num_modes = request.count, .progress = begin_key});
  outcome.effects = effects_of(derived.keys, outcome.result, !request.keys.empty());
  if (!request.common.out.empty())
    add_maps(request, outcome);
  outcome.seconds = whole.seconds();
  return outcome;
}

std::string mode_head(const SensitivityOutcome& outcome, Eigen::Index mode)
{
  const std::string& name = outcome.result.names[static_cast<std::size_t>(mode)];
  return name.empty() ? message("mode ", mode + 1) : name;
}

double steady_slope(const KeyEffect& effect, Eigen::Index mode)
{
  const double greatest = effect.slopes.slopes_hz.cwiseAbs().maxCoeff();
  if (greatest == 0.0)
    return 0.0;
  const double unit = std::pow(10.0, std::floor(std::log10(greatest)) - 5.0);
  return rounded(std::round(effect.slopes.slopes_hz(mode) / unit) * unit);
}

} // namespace plate
