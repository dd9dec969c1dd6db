// SPDX-License-Identifier: MPL-2.0
#include <plate/materials/material.h>

#include <plate/core/error.h>

#include <cmath>
#include <utility>

namespace plate
{

Eigen::Matrix<double, 6, 6> compliance(const OrthotropicElastic& m)
{
  Eigen::Matrix<double, 6, 6> S = Eigen::Matrix<double, 6, 6>::Zero();
  S(0, 0) = 1.0 / m.E1;
  S(1, 1) = 1.0 / m.E2;
  S(2, 2) = 1.0 / m.E3;
  S(0, 1) = S(1, 0) = -m.nu12 / m.E1;
  S(0, 2) = S(2, 0) = -m.nu13 / m.E1;
  S(1, 2) = S(2, 1) = -m.nu23 / m.E2;
  S(3, 3) = 1.0 / m.G23;
  S(4, 4) = 1.0 / m.G13;
  S(5, 5) = 1.0 / m.G12;
  return S;
}

void check_elastic(const OrthotropicElastic& m)
{
  const std::pair<const char*, double> moduli[] = {{"E1", m.E1},   {"E2", m.E2},   {"E3", m.E3},
                                                   {"G12", m.G12}, {"G13", m.G13}, {"G23", m.G23}};
  for (const auto& [name, value] : moduli)
  {
    if (!(value > 0.0 && std::isfinite(value)))
      throw InvalidInput(message("elastic constants: ", name, " must be positive and finite; got ", value, " Pa"));
  }

  // Pairwise bounds first: they name the ratio at fault, the determinant only says that all three disagree.
  const auto check_ratio = [](const char* name, double nu, const char* moduli_text, double ratio)
  {
    if (!(std::abs(nu) < std::sqrt(ratio)))
      throw InvalidInput(message("elastic constants: |", name, "| must be below sqrt(", moduli_text,
                                 ") = ", std::sqrt(ratio), "; got ", nu,
                                 "; is it given for the stiff axis, or swapped with its reciprocal?"));
  };
  check_ratio("nu12", m.nu12, "E1/E2", m.E1 / m.E2);
  check_ratio("nu13", m.nu13, "E1/E3", m.E1 / m.E3);
  check_ratio("nu23", m.nu23, "E2/E3", m.E2 / m.E3);

  const double nu21 = m.nu12 * m.E2 / m.E1;
  const double nu31 = m.nu13 * m.E3 / m.E1;
  const double nu32 = m.nu23 * m.E3 / m.E2;
  const double determinant = 1.0 - m.nu12 * nu21 - m.nu23 * nu32 - m.nu13 * nu31 - 2.0 * nu21 * nu32 * m.nu13;
  if (!(determinant > 0.0))
    throw InvalidInput(
        message("elastic constants: nu12 = ", m.nu12, ", nu13 = ", m.nu13, ", nu23 = ", m.nu23,
                " together give a solid that would release energy when strained (1 - nu12 nu21 - nu23 nu32"
                " - nu13 nu31 - 2 nu21 nu32 nu13 = ",
                determinant, ", must be positive)"));
}

Material with_loss_step(const Material& material, double step)
{
  Material changed = material;
  OrthotropicElastic& elastic = changed.elastic;
  const LossFactors& loss = material.loss;
  elastic.E1 *= 1.0 + step * loss.E1;
  elastic.E2 *= 1.0 + step * loss.E2;
  elastic.E3 *= 1.0 + step * loss.E3;
  elastic.G12 *= 1.0 + step * loss.G12;
  elastic.G13 *= 1.0 + step * loss.G13;
  elastic.G23 *= 1.0 + step * loss.G23;
  return changed;
}

} // namespace plate
