// SPDX-License-Identifier: MPL-2.0
#include "body_curves.h"

#include "text_table.h"

#include <algorithm>
#include <cstddef>
#include <iterator>

namespace plate
{
namespace
{

/// The bodies of an outcome with what marks their columns and curves.
struct Shown
{
  const BodyResult* result;
  std::string prefix; // of columns
  std::string suffix; // of labels
};

std::vector<Shown> shown_bodies(const BodyOutcome& outcome)
{
  if (!outcome.reference)
    return {{&outcome.body, "", ""}};
  return {{&outcome.body, "", ", here"}, {&*outcome.reference, "reference_", ", reference"}};
}

std::vector<double> levels_of(const std::vector<std::complex<double>>& Y)
{
  std::vector<double> out;
  std::transform(Y.begin(), Y.end(), std::back_inserter(out), mobility_level);
  return out;
}

std::vector<double> levels_of(const std::vector<BandLevel>& bands)
{
  std::vector<double> out;
  std::transform(bands.begin(), bands.end(), std::back_inserter(out),
                 [](const BandLevel& band) { return band.level_db; });
  return out;
}

/// Which body the curves of a reference belong to.
std::vector<std::string> notes_of(const BodyOutcome& outcome)
{
  if (!outcome.reference)
    return {};
  return {"reference: " + outcome.reference->design.title};
}

/// Both ways to drive the bridge, body by body.
std::vector<LevelCurve> curves_of(const BodyOutcome& outcome, const auto& quantity)
{
  std::vector<LevelCurve> curves;
  for (const Shown& body : shown_bodies(outcome))
  {
    const auto values = quantity(*body.result);
    curves.push_back({.label = "both feet together" + body.suffix, .levels = levels_of(values.vertical)});
    curves.push_back({.label = "feet against each other (rocking)" + body.suffix, .levels = levels_of(values.rocking)});
  }
  return curves;
}

} // namespace

BridgeMobility bridge_mobility(const BodyResult& result)
{
  constexpr double from = 50.0; // [Hz]
  constexpr double to = 2000.0; // [Hz]
  constexpr int count = 801;    // 0.5 % apart: four within the width of a peak of 2 % loss
  BridgeMobility out{.frequency_hz = log_frequencies(from, to, count), .vertical = {}, .rocking = {}};
  for (const double f : out.frequency_hz)
  {
    const Eigen::MatrixXcd Y = mobility(result.bridge, f);
    out.vertical.push_back(Y(vertical, vertical));
    out.rocking.push_back(Y(rocking, rocking));
  }
  return out;
}

BridgeSound bridge_sound(const BodyResult& result)
{
  constexpr double from = 100.0; // [Hz]
  constexpr double to = 1000.0;  // [Hz]
  return {.vertical = radiated_bands(result.bridge, vertical, result.air, from, to),
          .rocking = radiated_bands(result.bridge, rocking, result.air, from, to)};
}

std::string mobility_csv(const BodyOutcome& outcome)
{
  std::vector<std::string> heads = {"frequency_hz"};
  std::vector<BridgeMobility> bodies;
  for (const Shown& body : shown_bodies(outcome))
  {
    for (const char* column : {"vertical_db", "vertical_real_s_per_kg", "vertical_imaginary_s_per_kg", "rocking_db",
                               "rocking_real_s_per_kg", "rocking_imaginary_s_per_kg"})
      heads.push_back(body.prefix + column);
    bodies.push_back(bridge_mobility(*body.result));
  }
  std::string out = csv_line(heads);
  for (std::size_t i = 0; i < bodies.front().frequency_hz.size(); ++i)
  {
    std::vector<std::string> row = {compact(bodies.front().frequency_hz[i])};
    for (const BridgeMobility& body : bodies)
      for (const std::complex<double> Y : {body.vertical[i], body.rocking[i]})
        row.insert(row.end(), {compact(mobility_level(Y)), compact(Y.real()), compact(Y.imag())});
    out += csv_line(row);
  }
  return out;
}

std::string radiation_csv(const BodyOutcome& outcome)
{
  std::vector<std::string> heads = {"band_hz"};
  std::vector<BridgeSound> bodies;
  for (const Shown& body : shown_bodies(outcome))
  {
    for (const char* column : {"vertical_db_at_1_m_for_1_n", "rocking_db_at_1_m_for_1_n"})
      heads.push_back(body.prefix + column);
    bodies.push_back(bridge_sound(*body.result));
  }
  std::string out = csv_line(heads);
  for (std::size_t i = 0; i < bodies.front().vertical.size(); ++i)
  {
    std::vector<std::string> row = {compact(bodies.front().vertical[i].centre_hz)};
    for (const BridgeSound& body : bodies)
      row.insert(row.end(), {compact(body.vertical[i].level_db), compact(body.rocking[i].level_db)});
    out += csv_line(row);
  }
  return out;
}

LevelPicture mobility_picture(const BodyOutcome& outcome)
{
  LevelPicture picture{.title = outcome.body.design.title,
                       .quantity = "mobility at the bridge's feet, dB re 1 s/kg",
                       .frequency_hz = bridge_mobility(outcome.body).frequency_hz,
                       .curves = curves_of(outcome, bridge_mobility),
                       .notes = notes_of(outcome)};
  for (const BodyModeName& name : outcome.body.names)
    picture.marks.push_back({.frequency_hz = outcome.body.traits[name.mode].frequency_hz, .label = name.name});
  return picture;
}

LevelPicture radiation_picture(const BodyOutcome& outcome)
{
  LevelPicture picture{.title = outcome.body.design.title,
                       .quantity = "sound in third octaves, dB at 1 m for 1 N",
                       .frequency_hz = {},
                       .curves = curves_of(outcome, bridge_sound),
                       .notes = notes_of(outcome)};
  for (const BandLevel& band : bridge_sound(outcome.body).vertical)
    picture.frequency_hz.push_back(band.centre_hz);
  return picture;
}

} // namespace plate
