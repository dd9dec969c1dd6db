// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>
#include <plate/design/load_design.h>
#include <plate/solvers/studies/load.h>

#include <string_view>
#include <vector>

namespace plate
{

/// A factor by which strength in use falls short, with its name in the design file.
struct AppliedFactor
{
  std::string_view key; ///< in [knock_down]
  double factor;        ///< [-]
};

/// One of the factors, what it is for, and where its default comes from.
struct KnockDownFactor
{
  std::string_view key;
  double KnockDowns::*factor;
  std::string_view meaning;
  std::string_view source;
};

[[nodiscard]] const std::vector<KnockDownFactor>& knock_down_factors();

/// Factors that a case meets at its worst place: by material, cut edge and duration.
[[nodiscard]] std::vector<AppliedFactor> knock_downs_of(const LoadCase& load, const Model& model,
                                                        const KnockDowns& factors);

} // namespace plate
