// SPDX-License-Identifier: MPL-2.0
#include "body_comparison.h"

#include "body_curves.h"
#include "body_shapes.h"
#include "compare_result.h"
#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>
#include <plate/meshes/side_by_side_picture.h>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>

namespace plate
{
namespace
{

using Json = nlohmann::ordered_json;


/// A number of a body that has one.
struct Quantity
{
  const char* words;
  double body, reference;
  int decimals;
};

std::vector<Quantity> quantities(const BodyResult& body, const BodyResult& reference)
{
  const System& a = body.system.system;
  const System& b = reference.system.system;
  const Eigen::Vector3d at = a.centre_of_gravity * millimetres;
  const Eigen::Vector3d other = b.centre_of_gravity * millimetres;
  return {{"mass g", a.mass * grams, b.mass * grams, 1},
          {"balance point x mm", at.x(), other.x(), 1},
          {"balance point y mm", at.y(), other.y(), 1},
          {"centre of gravity z mm", at.z(), other.z(), 1},
          {"air l", body.modes.volume * litres, reference.modes.volume * litres, 3},
          {"conductance of the soundholes mm", body.modes.conductance * millimetres,
           reference.modes.conductance * millimetres, 1},
          {"air between rigid walls Hz", body.modes.rigid_walls_hz(0), reference.modes.rigid_walls_hz(0), 1}};
}

std::string quantities_text(const BodyResult& body, const BodyResult& reference)
{
  TextTable table({"<", "here", "ref.", "difference"});
  for (const Quantity& q : quantities(body, reference))
    table.add({q.words, fixed(q.body, q.decimals), fixed(q.reference, q.decimals),
               with_sign(q.body - q.reference, q.decimals)});
  return table.text();
}

/// Name of a mode, also of one beyond those shown, which have none.
std::string name_at(const BodyResult& result, int mode)
{
  const std::optional<BodyModeName> name = name_of(result, static_cast<std::size_t>(mode));
  return name ? name->name : std::string();
}

std::string modes_text(const BodyResult& body, const BodyResult& reference)
{
  const BodyComparison comparison = compare_bodies(body, reference);
  TextTable table({"ref.", "Hz ref.", "<name", "here", "Hz here", "<name", "%", "cents", "likeness"});
  for (const ShapePair& pair : comparison.pairs)
  {
    const double from = reference.modes.coupled.frequencies_hz(pair.reference);
    const double to = comparison.frequencies_hz(pair.other);
    const FrequencyDifference difference = frequency_difference(from, to);
    table.add({std::to_string(pair.reference + 1), fixed(from, 2), name_at(reference, pair.reference),
               std::to_string(pair.other + 1), fixed(to, 2), name_at(body, pair.other),
               with_sign(difference.percent, 1), with_sign(difference.cents, 0), fixed(pair.assurance, 2)});
  }
  std::string out = table.text();
  for (const int mode : comparison.unpaired)
    out += message("  mode ", mode + 1, " (", fixed(reference.modes.coupled.frequencies_hz(mode), 1),
                   " Hz) of the reference has no mode of like shape here among the lowest ",
                   comparison.frequencies_hz.size(), '\n');
  return out;
}

/// The name of a band: its centre as rounded by the standard [IEC61260].
std::string band_name(double centre_hz)
{
  constexpr std::array<double, 10> leads = {1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0};
  const long band = std::lround(10.0 * std::log10(centre_hz));
  return fixed(leads[static_cast<std::size_t>(band % 10)] * std::pow(10.0, static_cast<double>(band / 10)), 0);
}

std::string bands_text(const BodyResult& body, const BodyResult& reference)
{
  const BridgeSound here = bridge_sound(body);
  const BridgeSound there = bridge_sound(reference);
  TextTable table({"Hz", "together: here", "ref.", "difference", "against: here", "ref.", "difference"});
  for (std::size_t i = 0; i < here.vertical.size(); ++i)
  {
    std::vector<std::string> row = {band_name(here.vertical[i].centre_hz)};
    for (const auto& [a, b] : {std::pair{here.vertical[i], there.vertical[i]}, {here.rocking[i], there.rocking[i]}})
      row.insert(row.end(), {fixed(a.level_db, 1), fixed(b.level_db, 1), with_sign(a.level_db - b.level_db, 1)});
    table.add(std::move(row));
  }
  return table.text();
}

Json bands_json(const BodyResult& body, const BodyResult& reference)
{
  const BridgeSound here = bridge_sound(body);
  const BridgeSound there = bridge_sound(reference);
  Json json = Json::array();
  for (std::size_t i = 0; i < here.vertical.size(); ++i)
    json.push_back({{"band_hz", rounded(here.vertical[i].centre_hz)},
                    {"vertical_db", rounded(here.vertical[i].level_db)},
                    {"reference_vertical_db", rounded(there.vertical[i].level_db)},
                    {"rocking_db", rounded(here.rocking[i].level_db)},
                    {"reference_rocking_db", rounded(there.rocking[i].level_db)}});
  return json;
}

} // namespace

BodyComparison compare_bodies(const BodyResult& body, const BodyResult& reference)
{
  const auto count = static_cast<Eigen::Index>(reference.traits.size());
  const Eigen::VectorXd& all = body.modes.coupled.frequencies_hz;
  const Eigen::Index searched = std::min<Eigen::Index>(all.size(), num_searched(static_cast<int>(count)));
  const ModePairing pairing = pair_by_shape(shape_products(body_shapes(reference, count), body_shapes(body, searched)),
                                            reference.modes.coupled.frequencies_hz.head(count), all.head(searched));
  return {.pairs = pairing.pairs, .unpaired = pairing.unpaired, .frequencies_hz = all.head(searched)};
}

std::string comparison_text(const BodyResult& body, const BodyResult& reference)
{
  return message("here: ", body.design.title, "\nref.: ", reference.design.title, "\n\n",
                 quantities_text(body, reference), "\nModes paired by the shapes of both plates (likeness: modal ",
                 "assurance criterion, 1 for the same shape)\n\n", modes_text(body, reference),
                 "\nSound in third octaves, dB at 1 m for 1 N on both feet together and on the feet against each ",
                 "other\n\n", bands_text(body, reference), '\n');
}

Json comparison_json(const BodyResult& body, const BodyResult& reference)
{
  const BodyComparison comparison = compare_bodies(body, reference);
  Json pairs = Json::array();
  for (const ShapePair& pair : comparison.pairs)
  {
    const double from = reference.modes.coupled.frequencies_hz(pair.reference);
    const double to = comparison.frequencies_hz(pair.other);
    pairs.push_back({{"reference_mode", pair.reference + 1},
                     {"mode", pair.other + 1},
                     {"reference_name", name_at(reference, pair.reference)},
                     {"name", name_at(body, pair.other)},
                     {"mac", rounded(pair.assurance)},
                     {"reference_hz", rounded(from)},
                     {"frequency_hz", rounded(to)},
                     {"cents", rounded(frequency_difference(from, to).cents)}});
  }
  Json unpaired = Json::array();
  for (const int mode : comparison.unpaired)
    unpaired.push_back(mode + 1);
  return {{"pairs", pairs}, {"unpaired_reference_modes", unpaired}, {"bands", bands_json(body, reference)}};
}

std::string comparison_csv(const BodyResult& body, const BodyResult& reference)
{
  const BodyComparison comparison = compare_bodies(body, reference);
  std::string out =
      csv_line({"reference_mode", "reference_hz", "reference_name", "mode", "frequency_hz", "name", "cents", "mac"});
  for (const ShapePair& pair : comparison.pairs)
  {
    const double from = reference.modes.coupled.frequencies_hz(pair.reference);
    const double to = comparison.frequencies_hz(pair.other);
    out += csv_line({std::to_string(pair.reference + 1), compact(from), name_at(reference, pair.reference),
                     std::to_string(pair.other + 1), compact(to), name_at(body, pair.other),
                     compact(frequency_difference(from, to).cents), compact(pair.assurance)});
  }
  return out;
}

} // namespace plate
