// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// What tells the modes of a body apart. Amplitudes belong to a mode of unit modal mass.
struct BodyModeTraits
{
  double frequency_hz = 0.0;       ///< [Hz]
  double air_share = 0.0;          ///< of the air and the holes in the energy [-]
  double outflow = 0.0;            ///< of all holes together [m3/sqrt(kg)]
  double longitudinal_share = 0.0; ///< of the first cavity mode along the body in the potential energy [-]
  double wall_volume = 0.0;        ///< that the walls displace [m3/sqrt(kg)]
  double shear_share = 0.0;        ///< of top and back moving across the body against each other in the energy [-]
};

/// A name that a mode was given.
struct BodyModeName
{
  std::string name; ///< "A0", "A1", "CBR", "B1-", "B1+"
  std::size_t mode; ///< index
  double certainty; ///< 1 less the score of the next best mode over that of this one, 0...1 [-]
};

/// Whether a name is one of those that name_body_modes() gives.
[[nodiscard]] bool is_body_mode_name(std::string_view name);

/// Names of body modes by shape and air; each at most once, none where no mode qualifies.
///
/// - A0: below 350 Hz and below the cavity's first mode, greatest air share times outflow squared.
/// - A1: greatest share of the cavity's first mode along the body.
/// - CBR: top and back move across the body against each other (a cross-section shears like a rhomb), a tenth of the
///   energy at least: greatest share of that motion.
/// - B1-, B1+: of the modes between A0 and three times its frequency that have no name yet, the two to which the walls
///   owe most of the volume that they yield to a slow pressure (wall volume over frequency, squared), in order of
///   frequency.
/// @param modes        ascending
/// @param first_air_hz the cavity's first mode with rigid walls [Hz]
/// @source what the names mean: common practice, no source; the measures are ours; pinned by
///   tests/unit/post/body_mode_names_test.cpp
[[nodiscard]] std::vector<BodyModeName> name_body_modes(const std::vector<BodyModeTraits>& modes, double first_air_hz);

} // namespace plate
