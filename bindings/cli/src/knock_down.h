// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/assembly/model.h>
#include <plate/design/load_design.h>
#include <plate/post/strength_map.h>

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

/// How long a load acts.
enum class LoadDuration
{
  passing,
  lasting ///< for years
};

/// Factors that a load meets at its worst place: by material, cut edge and duration.
[[nodiscard]] std::vector<AppliedFactor> knock_downs_of(const StrengthPlace& worst, const Model& model,
                                                        LoadDuration duration, const KnockDowns& factors);

/// Of a case by its name: strings last.
[[nodiscard]] LoadDuration duration_of(std::string_view load_case);

/// A margin after the factors.
[[nodiscard]] double reduced(double margin, const std::vector<AppliedFactor>& factors);

} // namespace plate
