// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/materials/air.h>
#include <plate/solvers/coupled_modes.h>

#include <Eigen/Core>

#include <complex>
#include <vector>

namespace plate
{

/// Modes as a response needs them; rigid motions are modes of 0 Hz.
struct ResponseModes
{
  Eigen::VectorXd frequencies_hz; ///< (n) [Hz]
  Eigen::VectorXd loss;           ///< loss factors, (n) [-]
  Eigen::MatrixXd motion;         ///< of each drive (a point with a direction) in each mode, (d, n) [1/sqrt(kg)]
  Eigen::MatrixXd volumes;        ///< volumes that each mode displaces, any number of kinds, (v, n) [m3/sqrt(kg)]
  /// Compliance that the modes left out would have, (d, d), or empty: none [m/N].
  Eigen::MatrixXd residual_compliance = {};
};

/// Response modes of coupled modes, rigid motions after the others.
///
/// `volumes` has the volume change of the air inside, which is what walls and holes displace outside together, then the
/// outflow of each hole; the walls alone displace the first less the others.
/// @param drives  motion of each drive in each mode of the structure, (d, n) [1/sqrt(kg)]
/// @throws InvalidInput if the sizes differ
[[nodiscard]] ResponseModes response_modes(const CoupledModes& modes, const Eigen::MatrixXd& drives);

/// Mobility: velocity of each drive per force on each drive, (d, d), symmetric [s/kg].
///
/// Y = i w sum of a_r a_r^T / (w_r^2 (1 + i eta_r) - w^2): motion as exp(i w t), loss of hysteretic kind.
/// @param frequency_hz  positive [Hz]
/// @throws InvalidInput if sizes differ or the frequency is not positive
/// @source [Cremer2005] ch. 5; pinned by tests/unit/air/forced_response_test.cpp
[[nodiscard]] Eigen::MatrixXcd mobility(const ResponseModes& modes, double frequency_hz);

/// Volume velocity of each kind of ResponseModes::volumes per force on each drive, (v, d) [m3/(s N)].
///
/// @throws as mobility()
[[nodiscard]] Eigen::MatrixXcd volume_velocity(const ResponseModes& modes, double frequency_hz);

/// Frequencies at equal ratios, both ends among them [Hz].
///
/// @throws InvalidInput unless 0 < from < to and count >= 2
[[nodiscard]] std::vector<double> log_frequencies(double from, double to, int count);

/// 20 log10 |Y| re 1 s/kg [dB].
[[nodiscard]] double mobility_level(std::complex<double> Y);

/// Level in a band a third of an octave wide.
struct BandLevel
{
  double centre_hz; ///< 1000 * 10^(i/10) [Hz]
  double level_db;  ///< sound pressure at 1 m for a force of 1 N (rms) [dB re 20 uPa]
};

/// Sound of the volume velocity of the first kind at 1 m in free air, mean square over each band, for a force of 1 N of
/// any frequency.
///
/// The body counts as a monopole: right as long as it is small beside the wavelength over 2 pi; above, shape and
/// direction matter and this is a measure of the volume flow alone.
/// @param drive    index of the drive
/// @param from,to  nominal centres of the lowest and the highest band, e.g. 100 and 1000 [Hz]
/// @throws InvalidInput  as mobility(), or if the limits are not ascending or there is no such drive
/// @source monopole [Pierce2019] sec. 4.3, bands [IEC61260]
[[nodiscard]] std::vector<BandLevel> radiated_bands(const ResponseModes& modes, Eigen::Index drive, const Air& air,
                                                    double from, double to);

} // namespace plate
