// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "knock_down.h"
#include "shared_cases.h"

#include <plate/assembly/model.h>
#include <plate/solvers/statics.h>

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

[[nodiscard]] std::string margin_text(double margin); ///< as it is worth: three digits at most
[[nodiscard]] std::string factors_text(const std::vector<AppliedFactor>& factors);

/// Table of the strengths of all materials with their sources, and which are not judged.
[[nodiscard]] std::string strengths_text(std::span<const Model* const> models);

/// What margins mean and all factors.
[[nodiscard]] std::string knock_downs_text(const KnockDowns& factors);

/// Table of the loads of two designs, and how far each is from buckling.
[[nodiscard]] std::string comparison_text(const std::vector<SharedCase>& cases, const Eigen::VectorXd& factors_here,
                                          const Eigen::VectorXd& factors_of_reference);

/// How well several solutions hold, the worst of all.
class Evidence
{
public:
  void add(const StaticResult& solution, double balance_error);

  /// @param balance  what should balance, in a word
  [[nodiscard]] std::string text(std::string_view balance) const;

private:
  double residual_ = 0.0;
  double energy_ = 0.0;
  double balance_ = 0.0;
};

} // namespace plate
