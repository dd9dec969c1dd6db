// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"

#include <plate/meshes/level_picture.h>

#include <complex>
#include <string>
#include <vector>

namespace plate
{

/// Mobility at the bridge over frequency.
struct BridgeMobility
{
  std::vector<double> frequency_hz;           ///< [Hz]
  std::vector<std::complex<double>> vertical; ///< [s/kg]
  std::vector<std::complex<double>> rocking;  ///< [s/kg]
};

/// From 50 to 2000 Hz at equal ratios.
[[nodiscard]] BridgeMobility bridge_mobility(const BodyResult& result);

/// Level of the sound of body and holes as a small source, third octaves from 100 to 1000 Hz, see radiated_bands().
struct BridgeSound
{
  std::vector<BandLevel> vertical;
  std::vector<BandLevel> rocking; ///< the same bands
};

[[nodiscard]] BridgeSound bridge_sound(const BodyResult& result);

/// Both with columns of the reference, if there is one.
[[nodiscard]] std::string mobility_csv(const BodyOutcome& outcome);
[[nodiscard]] std::string radiation_csv(const BodyOutcome& outcome);

/// Both with curves of the reference, if there is one; named modes of the body alone are marked.
[[nodiscard]] LevelPicture mobility_picture(const BodyOutcome& outcome);
[[nodiscard]] LevelPicture radiation_picture(const BodyOutcome& outcome);

} // namespace plate
