// SPDX-License-Identifier: MPL-2.0
#include <plate/core/units.h>
#include <plate/solvers/forced_response.h>

#include <plate/core/error.h>

#include <cmath>

namespace plate
{
namespace
{

using Complex = std::complex<double>;
constexpr Complex i_unit = {0.0, 1.0};

void check(const ResponseModes& modes, double frequency_hz)
{
  const Eigen::Index n = modes.frequencies_hz.size();
  const Eigen::Index d = modes.motion.rows();
  const Eigen::MatrixXd& residual = modes.residual_compliance;
  if (modes.loss.size() != n || modes.motion.cols() != n || (modes.volumes.size() != 0 && modes.volumes.cols() != n) ||
      (residual.size() != 0 && (residual.rows() != d || residual.cols() != d)))
    throw InvalidInput(message("mobility: ", n, " modes and ", d, " drives need as many loss factors, ", d, " x ", n,
                               " motions and none or ", d, " x ", d, " compliances; got ", modes.loss.size(), ", ",
                               modes.motion.rows(), " x ", modes.motion.cols(), " and ", residual.rows(), " x ",
                               residual.cols()));
  if (!(frequency_hz > 0.0))
    throw InvalidInput(message("mobility: the frequency must be positive; got ", frequency_hz, " Hz"));
}

/// i w / (w_r^2 (1 + i eta_r) - w^2) of each mode.
Eigen::VectorXcd amplification(const ResponseModes& modes, double frequency_hz)
{
  const double w = two_pi * frequency_hz;
  Eigen::VectorXcd factor(modes.frequencies_hz.size());
  for (Eigen::Index r = 0; r < factor.size(); ++r)
  {
    const double wr2 = std::pow(two_pi * modes.frequencies_hz(r), 2);
    factor(r) = i_unit * w / (wr2 * Complex(1.0, modes.loss(r)) - w * w);
  }
  return factor;
}

/// Mean square of the volume velocity per force over a band [m6/(s2 N2)].
double mean_square(const ResponseModes& modes, Eigen::Index drive, const Air& air, double centre_hz)
{
  // A mode with a loss of 0.5 % is 0.5 % of its frequency wide, a band 23 %.
  constexpr int steps = 400;
  const double half = std::pow(10.0, 0.05);
  const double width = centre_hz * (half - 1.0 / half);
  double sum = 0.0;
  for (int i = 0; i < steps; ++i)
  {
    const double f = centre_hz / half + width * (i + 0.5) / steps;
    const double pressure = air.density * f / 2.0 * std::abs(volume_velocity(modes, f)(0, drive));
    sum += pressure * pressure; // at 1 m: rho w U / (4 pi)
  }
  return sum / steps;
}

} // namespace

ResponseModes response_modes(const CoupledModes& modes, const Eigen::MatrixXd& drives)
{
  if (drives.cols() != modes.structure.rows())
    throw InvalidInput(message("response_modes: drives must have a column for each of ", modes.structure.rows(),
                               " modes of the structure; got ", drives.cols()));
  const Eigen::Index m = modes.frequencies_hz.size();
  const Eigen::Index num_rigid = modes.rigid_motions.cols();
  const Eigen::Index num_holes = modes.outflow.rows();
  ResponseModes response = {.frequencies_hz = Eigen::VectorXd::Zero(m + num_rigid),
                            .loss = Eigen::VectorXd::Zero(m + num_rigid),
                            .motion = Eigen::MatrixXd(drives.rows(), m + num_rigid),
                            .volumes = Eigen::MatrixXd::Zero(1 + num_holes, m + num_rigid)};
  response.frequencies_hz.head(m) = modes.frequencies_hz;
  response.loss.head(m) = modes.loss();
  response.motion << drives * modes.structure, drives * modes.rigid_motions.topRows(drives.cols());
  response.volumes.topLeftCorner(1, m) = modes.volume_change.transpose();
  response.volumes.bottomRows(num_holes) << modes.outflow, modes.rigid_motions.bottomRows(num_holes);
  return response;
}

Eigen::MatrixXcd mobility(const ResponseModes& modes, double frequency_hz)
{
  check(modes, frequency_hz);
  const Eigen::MatrixXcd motion = modes.motion.cast<Complex>();
  Eigen::MatrixXcd Y = motion * amplification(modes, frequency_hz).asDiagonal() * motion.transpose();
  if (modes.residual_compliance.size() != 0)
    Y += (i_unit * two_pi * frequency_hz) * modes.residual_compliance.cast<Complex>();
  return Y;
}

Eigen::MatrixXcd volume_velocity(const ResponseModes& modes, double frequency_hz)
{
  check(modes, frequency_hz);
  return modes.volumes.cast<Complex>() * amplification(modes, frequency_hz).asDiagonal() *
         modes.motion.cast<Complex>().transpose();
}

std::vector<double> log_frequencies(double from, double to, int count)
{
  if (!(from > 0.0 && from < to && count >= 2))
    throw InvalidInput(message("log_frequencies: from must be positive and below to, and at least 2 be asked for; got ",
                               from, " Hz, ", to, " Hz and ", count));
  std::vector<double> f;
  f.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i)
    f.push_back(from * std::pow(to / from, static_cast<double>(i) / (count - 1)));
  f.back() = to;
  return f;
}

double mobility_level(std::complex<double> Y)
{
  return 20.0 * std::log10(std::abs(Y));
}

std::vector<BandLevel> radiated_bands(const ResponseModes& modes, Eigen::Index drive, const Air& air, double from,
                                      double to)
{
  if (!(from > 0.0 && from <= to && drive >= 0 && drive < modes.motion.rows() && modes.volumes.rows() > 0))
    throw InvalidInput(message("radiated_bands: the modes need volumes, limits must be positive and ascending and the "
                               "drive one of ",
                               modes.motion.rows(), "; got ", from, " Hz, ", to, " Hz and drive ", drive));
  constexpr double reference = 2e-5; // [Pa]
  const auto number = [](double hz) { return 10.0 * std::log10(hz / 1000.0); };
  std::vector<BandLevel> bands;
  for (int i = static_cast<int>(std::lround(number(from))); i <= static_cast<int>(std::lround(number(to))); ++i)
  {
    const double centre = 1000.0 * std::pow(10.0, 0.1 * i);
    bands.push_back({.centre_hz = centre,
                     .level_db = 10.0 * std::log10(mean_square(modes, drive, air, centre) / (reference * reference))});
  }
  return bands;
}

} // namespace plate
