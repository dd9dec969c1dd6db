// SPDX-License-Identifier: MPL-2.0
#include "sensitivity_result.h"

#include "body_result.h"
#include "checked_body.h"
#include "checked_design.h"
#include "stopwatch.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/design/body_design_model.h>
#include <plate/design/design_model.h>
#include <plate/solvers/studies/body_sensitivity.h>

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

void set_effects(const std::vector<DerivedKey>& keys, const std::vector<Sensitivity>& slopes, bool idle_too,
                 SensitivityOutcome& out)
{
  for (std::size_t k = 0; k < slopes.size(); ++k)
    if (slopes[k].acts || idle_too)
      out.effects.push_back(
          {.key = keys[k], .slopes = slopes[k], .cents = greatest_cents(keys[k], slopes[k], out.frequencies_hz)});
  std::stable_sort(out.effects.begin(), out.effects.end(),
                   [](const KeyEffect& a, const KeyEffect& b) { return a.cents > b.cents; });
  out.num_keys_done = slopes.size();
}

void set_maps(const SensitivityRequest& request, SensitivityOutcome& outcome)
{
  for (const std::string& word : request.maps)
    outcome.maps.push_back(mode_of("--map", word, outcome.names));
  if (request.maps.empty())
    outcome.maps = usual_maps(outcome.names);
  if (!request.leave.empty())
    outcome.leave = mode_of("--leave", request.leave, outcome.names);
}

/// Names and parameters as the studies take them.
struct StudiedKeys
{
  std::vector<std::string> names = {};
  std::vector<SensitivityParameter> parameters = {};
  std::vector<double> values = {};
};

StudiedKeys studied(const std::vector<DerivedKey>& keys)
{
  StudiedKeys out;
  for (const DerivedKey& key : keys)
  {
    out.names.push_back(key.key);
    out.parameters.push_back({.value = key.value, .scale = key.scale});
    out.values.push_back(key.value);
  }
  return out;
}

/// Maps of top and back. That the inner face of a plate moves into the air is left out.
std::vector<MappedPlate> mapped_plates(const BodyResult& body)
{
  std::vector<MappedPlate> out;
  const auto count = static_cast<Eigen::Index>(body.traits.size());
  for (const std::size_t p : {BodyModel::top, BodyModel::back})
  {
    const BodyPart& part = body.model.body.parts[p];
    const PartSystem& system = body.system.parts[p];
    ModalResult modes;
    modes.frequencies_hz = body.modes.coupled.frequencies_hz.head(count);
    modes.shapes = system.from_body * body.modes.shapes.leftCols(count);
    out.push_back({.name = part.name,
                   .title = message(body.design.title, ", ", part.name),
                   .model = part.model,
                   .num_patches = (p == BodyModel::top ? body.design.top : body.design.back).patches.size(),
                   .slopes = thickness_slopes(part.model, system.dofs, modes)});
  }
  return out;
}

std::vector<std::string> names_of(const BodyResult& body)
{
  std::vector<std::string> names;
  for (std::size_t i = 0; i < body.traits.size(); ++i)
  {
    const std::optional<BodyModeName> name = name_of(body, i);
    names.push_back(name ? name->name : "");
  }
  return names;
}

} // namespace

SensitivityOutcome compute_sensitivity(const DesignDocument& document, const SensitivityRequest& request,
                                       const BeginKey& begin_key)
{
  const Stopwatch whole;
  const DerivedKeys derived = derived_keys(document, request.keys);
  SensitivityOutcome outcome{.title = checked_design(document, request.count).title};
  const StudiedKeys keys = studied(derived.keys);
  DesignModel design(document, keys.names);
  const SensitivityResult result =
      sensitivities(design, keys.parameters, {.num_modes = request.count, .progress = begin_key});
  outcome.in_air = result.model.air_density > 0.0;
  outcome.mass = result.system.mass;
  outcome.unknowns = result.system.dofs.num_equations;
  outcome.frequencies_hz = result.modes.frequencies_hz;
  outcome.names = result.names;
  outcome.close = result.close;
  outcome.left_out = derived.left_out;
  outcome.complete = result.complete;
  set_effects(derived.keys, result.parameters, !request.keys.empty(), outcome);
  if (!request.common.out.empty())
  {
    set_maps(request, outcome);
    outcome.plates.push_back({.name = "",
                              .title = outcome.title,
                              .model = result.model,
                              .num_patches = result.model.patches.size(),
                              .slopes = thickness_slopes(result.model, result.system.dofs, result.modes)});
  }
  outcome.seconds = whole.seconds();
  return outcome;
}

SensitivityOutcome compute_sensitivity(const BodyDocument& document, const SensitivityRequest& request,
                                       const BeginKey& begin_key)
{
  const Stopwatch whole;
  const DerivedKeys derived = derived_keys(document, request.keys);
  BodyDesign checked = checked_body(document, request.count);
  const StudiedKeys keys = studied(derived.keys);
  BodyDesignModel design(document, keys.names);
  const BodyPoint point = design.build(keys.values);
  const BodyResult body = compute_body(std::move(checked), *design.first(), request.count, num_refined(request.count));
  const BodySensitivityResult result =
      body_sensitivities(design, keys.parameters, {.point = point, .system = body.system, .modes = body.modes},
                         {.num_modes = request.count, .progress = begin_key});
  SensitivityOutcome outcome{.title = body.design.title,
                             .of_body = true,
                             .in_air = true,
                             .mass = body.system.system.mass,
                             .unknowns = body.system.system.dofs.num_equations,
                             .frequencies_hz = body.modes.coupled.frequencies_hz.head(request.count),
                             .names = names_of(body),
                             .close = result.close,
                             .left_out = derived.left_out,
                             .complete = result.complete};
  set_effects(derived.keys, result.parameters, !request.keys.empty(), outcome);
  if (!request.common.out.empty())
  {
    set_maps(request, outcome);
    outcome.plates = mapped_plates(body);
  }
  outcome.seconds = whole.seconds();
  return outcome;
}

std::string mode_head(const SensitivityOutcome& outcome, Eigen::Index mode)
{
  const std::string& name = outcome.names[static_cast<std::size_t>(mode)];
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
