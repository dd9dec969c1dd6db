// SPDX-License-Identifier: MPL-2.0
// Let theta be the displacement potential of the air, grad theta its displacement, expanded in the cavity modes psi_n
// with wave numbers k_n. Walls and holes with amplitudes x draw b_n x from it, so its dilatation in mode n is
// b_n x - k_n^2 theta_n. With q_n = sqrt(rho) (b_n x - k_n^2 theta_n) / k_n as unknown the potential energy is
// 1/2 w_n^2 q_n^2 and the kinetic energy 1/2 rho k_n^2 theta_n'^2 = 1/2 (sqrt(rho) b_n x' / k_n - q_n')^2: symmetric,
// and the mass stays positive definite when modes are cut off, as the terms in x alone are those of all modes.
#include <plate/core/units.h>
#include <plate/solvers/coupled_modes.h>

#include <plate/core/error.h>

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>
#include <limits>

namespace plate
{
namespace
{

/// Modes below this share of the lowest frequency of air and structure are motions without energy.
constexpr double rigid_share = 0.01;

struct Sizes
{
  Eigen::Index structure;
  Eigen::Index holes;
  Eigen::Index cavity;
  [[nodiscard]] Eigen::Index motions() const { return structure + holes; }
  [[nodiscard]] Eigen::Index all() const { return motions() + cavity; }
};

void check_loss(const char* of, const Eigen::VectorXd& loss, Eigen::Index size)
{
  if (loss.size() != 0 && loss.size() != size)
    throw InvalidInput(
        message("solve_coupled_modes: ", of, " needs none or ", size, " loss factors; got ", loss.size()));
}

Sizes checked_sizes(const StructureModes& structure, const HoleUnknowns& holes, const AirMoments& moments)
{
  const Sizes size = {structure.frequencies_hz.size(), holes.inertance.rows(), moments.frequencies_hz.size()};
  const Eigen::Index m = size.motions();
  if (holes.inertance.cols() != size.holes || moments.volume_change.size() != m || moments.b.cols() != m ||
      moments.b.rows() != size.cavity || moments.inertance.rows() != m || moments.inertance.cols() != m || m == 0)
    throw InvalidInput(message("solve_coupled_modes: the moments must be those of ", size.structure,
                               " modes of the structure and ", size.holes, " holes; got ", moments.volume_change.size(),
                               " volumes, ", moments.b.rows(), " x ", moments.b.cols(), " moments of ", size.cavity,
                               " cavity modes and an inertance of ", moments.inertance.rows(), " x ",
                               moments.inertance.cols()));
  check_loss("the structure", structure.loss, size.structure);
  check_loss("the holes", holes.loss, size.holes);
  for (const EnergyPart& part : structure.parts)
    if (part.stiffness.rows() != size.structure || part.stiffness.cols() != size.structure ||
        part.mass.rows() != size.structure || part.mass.cols() != size.structure)
      throw InvalidInput(message("solve_coupled_modes: the matrices of part ", part.name, " must be ", size.structure,
                                 " x ", size.structure));
  return size;
}

Eigen::VectorXd squared(const Eigen::VectorXd& frequencies_hz)
{
  return (two_pi * frequencies_hz).cwiseAbs2();
}

/// Stiffness of one uniform pressure per square of volume.
double spring(const AirMoments& moments, const Air& air)
{
  return air.density * air.sound_speed * air.sound_speed / moments.volume;
}

Eigen::MatrixXd stiffness(const StructureModes& structure, const AirMoments& moments, const Air& air, const Sizes& size)
{
  Eigen::MatrixXd K = Eigen::MatrixXd::Zero(size.all(), size.all());
  K.diagonal().head(size.structure) = squared(structure.frequencies_hz);
  K.topLeftCorner(size.motions(), size.motions()) +=
      spring(moments, air) * moments.volume_change * moments.volume_change.transpose();
  K.diagonal().tail(size.cavity) = squared(moments.frequencies_hz);
  return K;
}

Eigen::MatrixXd mass(const HoleUnknowns& holes, const AirMoments& moments, const Air& air, const Sizes& size)
{
  Eigen::MatrixXd M = Eigen::MatrixXd::Identity(size.all(), size.all());
  M.block(size.structure, size.structure, size.holes, size.holes) = air.density * holes.inertance;
  const Eigen::VectorXd wave_numbers = two_pi * moments.frequencies_hz / air.sound_speed;
  M.topLeftCorner(size.motions(), size.motions()) += air.density * moments.inertance;
  M.bottomLeftCorner(size.cavity, size.motions()) =
      -std::sqrt(air.density) * wave_numbers.cwiseInverse().asDiagonal() * moments.b;
  return M; // the lower triangle counts
}

/// The lowest frequency with energy, in vacuo or of the air.
double scale(const StructureModes& structure, const AirMoments& moments, const Eigen::VectorXd& coupled)
{
  double lowest = coupled(coupled.size() - 1);
  for (const Eigen::VectorXd* list : {&structure.frequencies_hz, &moments.frequencies_hz})
    for (const double f : *list)
      if (f > rigid_share * list->maxCoeff())
        lowest = std::min(lowest, f);
  return lowest;
}

/// Twice the energy of each part and of the air in each mode, over `total`.
Eigen::MatrixXd shares(const std::vector<const Eigen::MatrixXd*>& parts, const Eigen::MatrixXd& x,
                       const Eigen::VectorXd& total)
{
  const auto num_parts = static_cast<Eigen::Index>(parts.size());
  Eigen::MatrixXd share(num_parts + 1, x.cols());
  for (Eigen::Index i = 0; i < num_parts; ++i)
    share.row(i) =
        x.cwiseProduct(*parts[static_cast<std::size_t>(i)] * x).colwise().sum().cwiseQuotient(total.transpose());
  share.row(num_parts) = (1.0 - share.topRows(num_parts).colwise().sum().array()).matrix();
  return share;
}

void set_shares(const StructureModes& structure, CoupledModes& modes)
{
  std::vector<EnergyPart> parts = structure.parts;
  if (parts.empty())
  {
    const Eigen::Index n = structure.frequencies_hz.size();
    parts.push_back({.name = "structure",
                     .stiffness = squared(structure.frequencies_hz).asDiagonal(),
                     .mass = Eigen::MatrixXd::Identity(n, n)});
  }
  std::vector<const Eigen::MatrixXd*> strain;
  std::vector<const Eigen::MatrixXd*> kinetic;
  for (const EnergyPart& part : parts)
  {
    modes.share_names.push_back(part.name);
    strain.push_back(&part.stiffness);
    kinetic.push_back(&part.mass);
  }
  modes.share_names.emplace_back("air");
  modes.strain_share = shares(strain, modes.structure, squared(modes.frequencies_hz));
  modes.kinetic_share = shares(kinetic, modes.structure, Eigen::VectorXd::Ones(modes.frequencies_hz.size()));
}

/// Sum of loss times energy over unknowns whose energies are weight times amplitude squared.
Eigen::VectorXd weighted_loss(const Eigen::VectorXd& loss, const Eigen::VectorXd& weight, const Eigen::MatrixXd& x)
{
  if (loss.size() == 0)
    return Eigen::VectorXd::Zero(x.cols());
  return x.cwiseAbs2().transpose() * loss.cwiseProduct(weight);
}

void set_loss(const StructureModes& structure, const HoleUnknowns& holes, const Air& air, CoupledModes& modes)
{
  modes.structural_loss = weighted_loss(structure.loss, squared(structure.frequencies_hz), modes.structure)
                              .cwiseQuotient(squared(modes.frequencies_hz));
  modes.hole_loss = weighted_loss(holes.loss, air.density * holes.inertance.diagonal(), modes.outflow);
  // Power of a monopole rho w^2 U^2 / (8 pi c) over w times the energy w^2 / 2, U = w V.
  modes.radiation_loss =
      air.density / (2.0 * air.sound_speed) * modes.frequencies_hz.cwiseProduct(modes.volume_change.cwiseAbs2());
}

} // namespace

CoupledModes solve_coupled_modes(const StructureModes& structure, const HoleUnknowns& holes, const AirMoments& moments,
                                 const Air& air)
{
  const Sizes size = checked_sizes(structure, holes, moments);
  const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> eigen(stiffness(structure, moments, air, size),
                                                                        mass(holes, moments, air, size));
  if (eigen.info() != Eigen::Success || !eigen.eigenvalues().allFinite())
    throw NumericalFailure(message("solve_coupled_modes: the mass of ", size.structure, " modes, ", size.holes,
                                   " holes and ", size.cavity,
                                   " cavity modes is not positive definite; a hole needs inertance, and moments must "
                                   "come from one cavity"));
  const Eigen::VectorXd frequencies = eigen.eigenvalues().cwiseMax(0.0).cwiseSqrt() / two_pi;
  const double least = rigid_share * scale(structure, moments, frequencies);
  const Eigen::Index num_rigid = (frequencies.array() < least).count();
  const Eigen::Index count = frequencies.size() - num_rigid;
  const Eigen::MatrixXd shapes = eigen.eigenvectors().rightCols(count);
  CoupledModes modes;
  modes.rigid_frequencies_hz = frequencies.head(num_rigid);
  modes.rigid_motions = eigen.eigenvectors().topLeftCorner(size.motions(), num_rigid);
  modes.frequencies_hz = frequencies.tail(count);
  modes.structure = shapes.topRows(size.structure);
  modes.outflow = shapes.middleRows(size.structure, size.holes);
  modes.cavity = shapes.bottomRows(size.cavity);
  modes.volume_change = shapes.topRows(size.motions()).transpose() * moments.volume_change;
  set_shares(structure, modes);
  set_loss(structure, holes, air, modes);
  return modes;
}

Eigen::MatrixXd cavity_pressures(const CavitySpace& space, const CavityModes& cavity, const Eigen::MatrixXd& flow,
                                 const CoupledModes& modes, const Air& air)
{
  Eigen::MatrixXd motions(modes.structure.rows() + modes.outflow.rows(), modes.structure.cols());
  motions << modes.structure, modes.outflow;
  if (flow.cols() != motions.rows() || cavity.shapes.cols() != modes.cavity.rows())
    throw InvalidInput(message("cavity_pressures: there must be a flow for each of ", motions.rows(), " motions and ",
                               modes.cavity.rows(), " cavity modes; got ", flow.cols(), " and ", cavity.shapes.cols()));
  const Eigen::VectorXd w = two_pi * cavity.frequencies_hz;
  const double rho_c2 = air.density * air.sound_speed * air.sound_speed;
  // Modes kept, by their compression; those left out have none and press by the acceleration of their potential.
  const Eigen::MatrixXd potential = static_pressures(space, flow);
  const Eigen::MatrixXd kept =
      (w / air.sound_speed).cwiseAbs2().cwiseInverse().asDiagonal() * (cavity.shapes.transpose() * flow);
  Eigen::MatrixXd p =
      (potential - cavity.shapes * kept) * motions * air.density * squared(modes.frequencies_hz).asDiagonal();
  p -= std::sqrt(rho_c2) * cavity.shapes * w.asDiagonal() * modes.cavity;
  p -= rho_c2 / cavity.volume * space.uniform() * modes.volume_change.transpose();
  return p;
}

} // namespace plate
