// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/cavity_modes.h>

#include "../lanczos_modes.h"
#include "../sparse_combination.h"

#include <plate/core/error.h>

#include <Eigen/Geometry>

#include <numeric>

namespace plate
{
namespace
{

/// Unknowns of each node.
std::vector<std::vector<int>> unknowns_by_node(const CavitySpace& space)
{
  std::vector<std::vector<int>> groups(static_cast<std::size_t>(space.mesh().back.size()));
  for (std::size_t node = 0; node < groups.size(); ++node)
  {
    groups[node].resize(static_cast<std::size_t>(space.degree()) + 1);
    std::iota(groups[node].begin(), groups[node].end(), static_cast<int>(node) * (space.degree() + 1));
  }
  return groups;
}

/// Half a wave over the longest way.
double lowest_estimate(const CavitySpace& space, const Air& air)
{
  Eigen::AlignedBox2d box;
  for (const Eigen::Vector3d& node : space.mesh().planform.nodes)
    box.extend(node.head<2>().eval());
  return air.sound_speed / (2.0 * box.diagonal().norm());
}

} // namespace

Eigen::MatrixXd static_pressures(const CavitySpace& space, const Eigen::MatrixXd& flow)
{
  if (flow.rows() != space.num_unknowns())
    throw InvalidInput(message("static_pressures: flows must have a row for each of ", space.num_unknowns(),
                               " unknowns of the pressure; got ", flow.rows()));
  const Eigen::VectorXd uniform = space.uniform();
  const Eigen::VectorXd weights = space.value_form().selfadjointView<Eigen::Lower>() * uniform;
  const double volume = weights.dot(uniform);
  const Eigen::MatrixXd balanced = flow - weights * (uniform.transpose() * flow) / volume;
  // A spring on one unknown leaves the solution of balanced flows as it is: the rows of the form add up to nothing.
  SparseMatrix form = space.gradient_form();
  Eigen::Index highest = 0;
  (space.mesh().top - space.mesh().back).maxCoeff(&highest);
  const Eigen::Index held = highest * (space.degree() + 1);
  form.coeffRef(held, held) *= 2.0;
  const SparseCholesky factor(form, unknowns_by_node(space));
  Eigen::MatrixXd p(flow.rows(), flow.cols());
  factor.solve(balanced, p);
  return p - uniform * (weights.transpose() * p) / volume;
}

CavityModes solve_cavity_modes(const CavitySpace& space, const Air& air, const ModalOptions& options)
{
  if (!(air.density > 0.0 && air.sound_speed > 0.0))
    throw InvalidInput(message("solve_cavity_modes: density and speed of sound must be positive; got ", air.density,
                               " kg/m3 and ", air.sound_speed, " m/s"));
  System system;
  system.K = air.sound_speed * air.sound_speed * space.gradient_form();
  system.M = space.value_form();
  system.rigid_motions = space.uniform();
  system.typical_frequency_hz = lowest_estimate(space, air);
  check_modal_options(system, options);
  const SparseCholesky factor(combination(system.K, -modal_shift(system), system.M), unknowns_by_node(space));
  ModalResult modes = lanczos_modes(system, factor, options);
  return {.frequencies_hz = std::move(modes.frequencies_hz),
          .shapes = std::move(modes.shapes),
          .residuals = std::move(modes.residuals),
          .volume = space.volume(),
          .status = modes.status};
}

AirMoments air_moments(const CavitySpace& space, const CavityModes& modes, const Eigen::MatrixXd& flow)
{
  const Eigen::MatrixXd inertance = flow.transpose() * static_pressures(space, flow);
  return {.volume = modes.volume,
          .volume_change = flow.transpose() * space.uniform(),
          .frequencies_hz = modes.frequencies_hz,
          .b = modes.shapes.transpose() * flow,
          .inertance = 0.5 * (inertance + inertance.transpose())};
}

AirMoments uniform_pressure(double volume, const Eigen::VectorXd& volume_change)
{
  const Eigen::Index m = volume_change.size();
  return {.volume = volume,
          .volume_change = volume_change,
          .frequencies_hz = {},
          .b = Eigen::MatrixXd(0, m),
          .inertance = Eigen::MatrixXd::Zero(m, m)};
}

} // namespace plate
