// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/air/hole_in_cavity.h>
#include <plate/assembly/form_changes.h>
#include <plate/solvers/studies/body_sensitivity.h>

#include <Eigen/Core>

#include <span>
#include <vector>

namespace plate::sensitivity
{

/// What the air adds to z_i^T K z_j and z_i^T M z_j of pairs of coupled modes.
struct AirForms
{
  Eigen::VectorXd stiffness; ///< (num_pairs)
  Eigen::VectorXd mass;      ///< (num_pairs)
};

/// Step of a difference where outlines of holes change, as part of a parameter's scale: the flow through a hole is
/// summed over cells and samples that change one by one. Of a slot's width 1e-4 left half of the derivative of the
/// conductance, 1e-3 5 %, 1e-2 1 %; truncation is 1e-3 at 2e-2.
inline constexpr double hole_step = 0.02;

/// Whether the outlines of the holes of two bodies are the same.
[[nodiscard]] bool same_outlines(const std::vector<HoleOutline>& a, const std::vector<HoleOutline>& b);

/// Whether the air of two bodies, with its walls, is the same.
[[nodiscard]] bool same_air(const BodyPoint& a, const BodyPoint& b);

/// The air of a body and of bodies near it, as modes of the body feel it.
///
/// The modes keep their motion of the walls, their outflow through the holes and their pressure in the cavity: the
/// cavity modes of a neighbour are turned among themselves so that they are nearest to those of the body.
class BodyAirForms
{
public:
  /// @param solved  must outlive this
  /// @param count   coupled modes
  /// @param degree  of the pressure through the height
  BodyAirForms(const SolvedBody& solved, Eigen::Index count, int degree);

  /// @param point  the body itself, or a neighbour on the same mesh, moved
  [[nodiscard]] AirForms at(const BodyPoint& point, std::span<const VectorPair> pairs) const;

private:
  [[nodiscard]] Eigen::MatrixXd wall_flow_of(const BodyPoint& point, const CavitySpace& space) const;

  const SolvedBody& solved_;
  int degree_;
  std::vector<Eigen::MatrixXd> displacements_; ///< of each part's nodes in its axes, (3 num_nodes, count)
  Eigen::MatrixXd outflow_;                    ///< (holes, count)
  Eigen::MatrixXd cavity_;                     ///< amplitudes, (cavity modes, count)
  Eigen::MatrixXd cavity_shapes_;              ///< of the body's own cavity, (num_unknowns, cavity modes)
};

} // namespace plate::sensitivity
