// SPDX-License-Identifier: MPL-2.0
#include "sensitivity_keys.h"

#include <plate/core/error.h>
#include <plate/design/body_design.h>
#include <plate/design/design_error.h>
#include <plate/design/keys.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace plate
{
namespace
{

bool is_in(std::string_view key, std::string_view table)
{
  return key.starts_with(table) && key.size() > table.size() && key[table.size()] == '.';
}

/// A key as it stands in its own file: of a body's plates without the plate.
std::string_view own_key(const DesignDocument&, std::string_view key)
{
  return key;
}

std::string_view own_key(const BodyDocument&, std::string_view key)
{
  for (const std::string_view plate : {"top.", "back."})
    if (key.starts_with(plate))
      return key.substr(plate.size());
  return key;
}

/// Whether a key is about loads, which free modes know nothing of.
bool is_load(const DesignDocument&, std::string_view key)
{
  constexpr std::array<std::string_view, 4> tables = {"strings", "soundpost", "handling", "knock_down"};
  return std::any_of(tables.begin(), tables.end(), [&](std::string_view table) { return is_in(key, table); });
}

bool is_load(const BodyDocument& document, std::string_view key)
{
  constexpr std::array<std::string_view, 3> tables = {"strings", "handling", "knock_down"};
  const std::string_view own = own_key(document, key);
  const bool is_of_plate = own.size() < key.size(); // a plate's post and bridge are those it would have alone
  return std::any_of(tables.begin(), tables.end(), [&](std::string_view table) { return is_in(own, table); }) ||
         (is_of_plate && is_in(own, "soundpost")) || key == "bridge.height";
}

/// Whether a key moves only together with another one, see derived_keys().
bool follows(const DesignDocument&, std::string_view)
{
  return false;
}

bool follows(const BodyDocument&, std::string_view key)
{
  return is_in(key, "back.outline");
}

/// Whether a key is the size of something that is not there: with it the body would have another mesh.
bool is_absent(const DesignDocument&, std::string_view)
{
  return false;
}

bool is_absent(const BodyDocument& document, std::string_view key)
{
  return (is_in(key, "linings") || is_in(key, "blocks")) && document.number(key) == 0.0;
}

bool is_patch_edge(std::string_view key)
{
  return is_in(key, "patch") && key.find(".plies.") == std::string_view::npos;
}

/// Whether a key moves the edge of a patch, or of a block's footprint, through the mesh of a plate.
bool moves_inner_edge(const DesignDocument&, std::string_view key)
{
  return is_patch_edge(key);
}

bool moves_inner_edge(const BodyDocument& document, std::string_view key)
{
  const bool has_blocks = document.design().blocks.end.x() > 0.0;
  return is_patch_edge(own_key(document, key)) ||
         (has_blocks && (is_in(key, "blocks.end") || key == "top.outline.length"));
}

/// The declaration of a key, or of the list it is a number of.
const Key& declaration(std::string_view key)
{
  const Key* own = find_key(key);
  return own ? *own : *find_key(key.substr(0, key.rfind('.')));
}

/// A change over which the plate becomes quite another one: the size itself of what has a size.
double scale_of(const Key& declared, double value)
{
  constexpr double radian = 57.3;   // [degrees]
  constexpr double distance = 50.0; // [mm], between places on an instrument plate
  constexpr double ratio = 0.1;     // of Poisson's ratios about zero
  const bool is_signed = declared.range.low < 0.0;
  if (declared.unit.name == "degrees")
    return radian;
  if (declared.unit.name == "mm" && is_signed)
    return distance;
  if (is_signed)
    return std::max(std::abs(value), ratio);
  return value > 0.0 ? value : 1.0;
}

/// See workshop_changes.
double change_of(std::string_view key, const Key& declared, double value)
{
  const std::string_view unit = declared.unit.name;
  const bool is_ply = key.ends_with(".thickness"); // thickness.value is that of a plate
  if (unit == "degrees" || unit == "deg C" || unit == "%")
    return 1.0;
  if ((unit == "mm" && !is_ply) || unit == "g")
    return 0.1;
  return value == 0.0 ? 0.01 : 0.01 * std::abs(value);
}

bool holds(const std::vector<std::string>& keys, std::string_view key)
{
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

template <class Document>
DerivedKey derived_key(const Document& document, const std::string& key)
{
  const double value = document.number(key);
  const std::string_view own = own_key(document, key);
  const Key& declared = declaration(own);
  return {.key = key,
          .unit = document.unit(key),
          .value = value,
          .scale = scale_of(declared, value),
          .change = change_of(own, declared, value)};
}

template <class Document>
void check_asked(const Document& document, const std::string& key)
{
  const auto fail = [&](const std::string& what)
  { throw DesignError(message("--key ", document.place(key), ": ", what)); };
  static_cast<void>(document.unit(key));
  const std::string_view own = own_key(document, key);
  if (is_in(own, "mesh"))
    fail("is a measure of the computation, not of the plate; take a key of the plate");
  if (moves_inner_edge(document, key))
    fail("the edge of a patch, or of a block under a plate, moves through the mesh in jumps, so there is no "
         "derivative; see plate sweep");
  if (follows(document, key))
    fail("both plates of a body have one outline; take top.outline, which counts for both");
  if (is_absent(document, key))
    fail("there is none of these to differentiate by; give them a size, or see plate sweep");
  if (own == "surroundings.humidity" && !holds(document.numeric_keys(), key))
    fail(
        message("the file gives no humidity, so its materials hold as they stand; say which, e.g. --set ", key, "=50"));
}

template <class Document>
DerivedKeys keys_of(const Document& document, const std::vector<std::string>& asked)
{
  DerivedKeys out;
  for (const std::string& key : asked)
  {
    check_asked(document, key);
    out.keys.push_back(derived_key(document, key));
  }
  if (!asked.empty())
    return out;
  for (const std::string& key : document.numeric_keys())
    if (const std::string_view own = own_key(document, key); moves_inner_edge(document, key))
      out.left_out.push_back(key);
    else if (!is_load(document, key) && !follows(document, key) && !is_absent(document, key) && !is_in(own, "mesh"))
      out.keys.push_back(derived_key(document, key));
  return out;
}

} // namespace

DerivedKeys derived_keys(const DesignDocument& document, const std::vector<std::string>& asked)
{
  return keys_of(document, asked);
}

DerivedKeys derived_keys(const BodyDocument& document, const std::vector<std::string>& asked)
{
  return keys_of(document, asked);
}

} // namespace plate
