// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <optional>
#include <string>

namespace plate
{

/// Elastic constants of an orthotropic solid in its own axes 1, 2, 3.
///
/// Wood: 1 = L (along the grain), 2 = R, 3 = T. Ply: 1 = fibre, 3 = through the ply.
struct OrthotropicElastic
{
  double E1;   ///< Young's modulus along 1 [Pa]
  double E2;   ///< Young's modulus along 2 [Pa]
  double E3;   ///< Young's modulus along 3 [Pa]
  double G12;  ///< shear modulus in the 1-2 plane [Pa]
  double G13;  ///< shear modulus in the 1-3 plane [Pa]
  double G23;  ///< shear modulus in the 2-3 plane [Pa]
  double nu12; ///< major Poisson ratio, contraction along 2 from stress along 1 [-]
  double nu13; ///< contraction along 3 from stress along 1 [-]
  double nu23; ///< contraction along 3 from stress along 2 [-]
};

/// Loss factors (imaginary over real part) of each modulus; Poisson's ratios are taken real.
struct LossFactors
{
  double E1 = 0.0;  ///< [-]
  double E2 = 0.0;  ///< [-]
  double E3 = 0.0;  ///< [-]
  double G12 = 0.0; ///< [-]
  double G13 = 0.0; ///< [-]
  double G23 = 0.0; ///< [-]
};

/// Free strains along 1 and 2 for a change of temperature or moisture by one unit; none along 3 is needed in a plate.
struct Expansion
{
  double along;  ///< along 1 [1/K, or strain per moisture content as a fraction]
  double across; ///< along 2 [as above]
};

/// Strengths of a ply in its plane, all positive.
struct Strength
{
  double Xt; ///< tension along 1 [Pa]
  double Xc; ///< compression along 1 [Pa]
  double Yt; ///< tension along 2 [Pa]
  double Yc; ///< compression along 2 [Pa]
  double S;  ///< in-plane shear [Pa]
};

/// Strengths of a ply in shear through its thickness.
struct ThroughStrength
{
  double S13; ///< [Pa]
  double S23; ///< wood: rolling shear [Pa]
};

/// How the stiffness of a wood depends on its moisture (moisture.h).
struct MoistureData
{
  double content;      ///< moisture content at which the constants hold, mass of water over dry wood [-]
  double intersection; ///< moisture content M_p above which stiffness no longer changes [-]
  double green_ratio;  ///< modulus at 12 % over that of green wood [-]
};

/// A material a plate can be made of.
struct Material
{
  std::string name;
  OrthotropicElastic elastic;
  double density; ///< [kg/m3]
  LossFactors loss = {};
  bool core = false; ///< light middle layer of a sandwich; "laminate thickness" factors leave it alone
  std::optional<Expansion> thermal = {};  ///< expansion by temperature
  std::optional<Expansion> swelling = {}; ///< expansion by moisture
  bool wood = false;                      ///< judged along and across the grain; tires under lasting load as wood does
  std::optional<Strength> strength = {};
  std::optional<ThroughStrength> through_strength = {};
  std::optional<MoistureData> moisture = {};
};

/// Compliance S of the solid in its own axes, strain = S * stress.
///
/// @return symmetric (6, 6), order (11, 22, 33, 23, 13, 12), engineering shear strains [1/Pa]
/// @source [Jones1999] eq. 2.16
[[nodiscard]] Eigen::Matrix<double, 6, 6> compliance(const OrthotropicElastic& elastic);

/// Checks that the constants describe a possible solid: finite, positive moduli, positive definite compliance.
///
/// @throws InvalidInput naming the constant or the combination that is impossible and the limit it breaks
/// @source [Jones1999] sec. 2.4; pinned by tests/unit/materials/material_test.cpp
void check_elastic(const OrthotropicElastic& elastic);

/// The material with every modulus multiplied by (1 + step * its loss factor).
///
/// Differences of two such materials give the dissipated energy of complex moduli, exact to second order in step.
[[nodiscard]] Material with_loss_step(const Material& material, double step);

} // namespace plate
