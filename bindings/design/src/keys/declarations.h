// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/keys.h>

#include <initializer_list>
#include <numbers>
#include <vector>

/// Declarations of the keys, one file for each part of a design, put together in keys.cpp.
namespace plate::key_declarations
{

inline constexpr KeyUnit mm{"mm", 1e-3};
inline constexpr KeyUnit degrees{"degrees", std::numbers::pi / 180.0};
inline constexpr KeyUnit gpa{"GPa", 1e9};
inline constexpr KeyUnit kg_m3{"kg/m3", 1.0};
inline constexpr KeyUnit percent{"%", 0.01};
inline constexpr KeyUnit mpa{"MPa", 1e6};
inline constexpr KeyUnit newton{"N", 1.0};
inline constexpr KeyUnit grams{"g", 1e-3};
inline constexpr KeyUnit g_m2{"g/m2", 1e-3};
inline constexpr KeyUnit celsius{"deg C", 1.0};
inline constexpr KeyUnit per_million_kelvin{"1e-6/K", 1e-6};
inline constexpr KeyUnit per_percent_moisture{"1/% moisture", 100.0};
inline constexpr KeyUnit pure{"", 1.0};

constexpr KeyRange between(double low, double high)
{
  return {.low = low, .high = high};
}
constexpr KeyRange above(double low, double high)
{
  return {.low = low, .high = high, .above = true};
}

// Limits are there to catch slips of unit and sign, not to judge a design: 3 m is longer than any instrument plate.
inline constexpr KeyRange plate_length = between(10.0, 3000.0);
inline constexpr KeyRange detail = between(0.01, 500.0);
inline constexpr KeyRange place = between(-3000.0, 3000.0);
inline constexpr KeyRange sheet = between(0.001, 50.0);
inline constexpr KeyRange turn = between(-360.0, 360.0);
inline constexpr KeyRange heavy = between(1.0, 25000.0); // kg/m3

/// Keys of several parts, one after the other.
[[nodiscard]] std::vector<Key> joined(std::initializer_list<std::vector<Key>> parts);

[[nodiscard]] std::vector<Key> plate_keys();    ///< title, outline, arching, thickness
[[nodiscard]] std::vector<Key> detail_keys();   ///< soundholes, setup, bass bar
[[nodiscard]] std::vector<Key> material_keys(); ///< material
[[nodiscard]] std::vector<Key> layup_keys();    ///< layup
[[nodiscard]] std::vector<Key> patch_keys();    ///< patch
[[nodiscard]] std::vector<Key> load_keys();     ///< strings, soundpost, handling, knock_down
[[nodiscard]] std::vector<Key> body_keys();     ///< body, ribs, linings, blocks, bridge, neck, air
[[nodiscard]] std::vector<Key> match_keys();    ///< of match problems
[[nodiscard]] std::vector<Key> use_keys();      ///< support, mass, surroundings, mesh

} // namespace plate::key_declarations
