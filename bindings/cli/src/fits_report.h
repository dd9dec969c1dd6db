// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/design/design.h>

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <vector>

namespace plate
{

/// One line per part given by points: how many, how far off, how many left out; empty without such parts.
[[nodiscard]] std::string fits_text(const std::vector<PartFit>& fits);

/// The same as JSON, with each outlier's line, place and residual.
[[nodiscard]] nlohmann::ordered_json fits_json(const std::vector<PartFit>& fits);

/// One line for each outlier, the first ten of a part.
[[nodiscard]] std::string outlier_warnings(const std::vector<PartFit>& fits);

} // namespace plate
