// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_result.h"

#include <complex>
#include <string>
#include <vector>

namespace plate
{

[[nodiscard]] std::string body_text(const BodyResult& result, bool timing);
[[nodiscard]] std::string body_json(const BodyResult& result, bool timing);
[[nodiscard]] std::string body_csv(const BodyResult& result); ///< the modes

/// Mobility at the bridge over frequency.
struct BridgeMobility
{
  std::vector<double> frequency_hz;           ///< [Hz]
  std::vector<std::complex<double>> vertical; ///< [s/kg]
  std::vector<std::complex<double>> rocking;  ///< [s/kg]
};

/// From 50 to 2000 Hz at equal ratios.
[[nodiscard]] BridgeMobility bridge_mobility(const BodyResult& result);
[[nodiscard]] std::string mobility_csv(const BridgeMobility& mobility);

/// Level of the sound of body and holes as a small source, third octaves from 100 to 1000 Hz, see radiated_bands().
[[nodiscard]] std::string radiation_csv(const BodyResult& result);

} // namespace plate
