// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/solvers/studies/body_load.h>

#include <vector>

namespace plate
{

/// A body held by nothing, with its factorised stiffness.
class FreeBody
{
public:
  /// @param body  must outlive this
  FreeBody(const Body& body, std::size_t top, std::size_t back);

  [[nodiscard]] const Body& body() const { return body_; }
  [[nodiscard]] const BodySystem& system() const { return system_; }
  [[nodiscard]] const StaticSolver& solver() const { return solver_; }
  [[nodiscard]] const std::vector<std::size_t>& ribs() const { return ribs_; } ///< parts but top and back

  /// State under forces that balance.
  ///
  /// @throws InvalidInput if they do not
  [[nodiscard]] BodyLoadCase solve(BodyLoadCase load, const PartUnknowns& forces) const;

  /// State under forces that set the body moving, which its inertia resists.
  [[nodiscard]] BodyLoadCase solve_moving(BodyLoadCase load, const PartUnknowns& forces) const;

  /// Adds a force spread over an area of a part, in the axes of the body.
  void add(std::size_t part, const PlanformRegion& region, const Eigen::Vector3d& force, PartUnknowns& forces) const;

  /// Where a force spread over an area of a part acts, in the axes of the body [m].
  [[nodiscard]] Eigen::Vector3d middle(std::size_t part, const PlanformRegion& region) const;

  /// Mean displacement along z of the body over an area of a part.
  [[nodiscard]] double mean_rise(std::size_t part, const PlanformRegion& region, const BodyLoadCase& load) const;

private:
  [[nodiscard]] BodyLoadCase finish(BodyLoadCase load, const Eigen::VectorXd& forces) const;

  const Body& body_;
  std::vector<std::size_t> ribs_;
  BodySystem system_;
  StaticSolver solver_;
};

} // namespace plate
