// SPDX-License-Identifier: MPL-2.0
#include "small_modes.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <Eigen/QR>

#include <cmath>

using namespace plate;
using namespace plate::reduced;

namespace
{

struct Pencil
{
  Eigen::MatrixXd stiffness;
  Eigen::MatrixXd mass;
};

/// Known eigenvalues in a mixed basis, two rigid motions first.
Pencil known_pencil(const Eigen::VectorXd& eigenvalues)
{
  constexpr Eigen::Index num_rigid = 2;
  const Eigen::Index size = eigenvalues.size() + num_rigid;
  // Any regular mixture of the modes; the elastic ones carry rigid motion, but the rigid ones no elastic one.
  Eigen::MatrixXd mixture(size, size);
  for (Eigen::Index i = 0; i < size; ++i)
    for (Eigen::Index j = 0; j < size; ++j)
      mixture(i, j) = std::sin(1.0 + 3.7 * static_cast<double>(i * size + j)) + (i == j ? 12.0 : 0.0);
  mixture.bottomLeftCorner(size - num_rigid, num_rigid).setZero();
  Eigen::VectorXd stiffness = Eigen::VectorXd::Zero(size);
  stiffness.tail(eigenvalues.size()) = eigenvalues;
  return {mixture.transpose() * stiffness.asDiagonal() * mixture, mixture.transpose() * mixture};
}

void check_modes(const Eigen::VectorXd& eigenvalues, Eigen::Index count)
{
  const Pencil pencil = known_pencil(eigenvalues);
  const SmallModes modes = small_modes(pencil.stiffness, pencil.mass, 2, count);
  REQUIRE(modes.eigenvalues.size() == count);
  for (Eigen::Index i = 0; i < count; ++i)
    CHECK(modes.eigenvalues(i) == doctest::Approx(eigenvalues(i)).epsilon(1e-8));
  const Eigen::MatrixXd gram = modes.vectors.transpose() * pencil.mass * modes.vectors;
  CHECK((gram - Eigen::MatrixXd::Identity(count, count)).norm() < 1e-6);
  const Eigen::MatrixXd residual =
      pencil.stiffness * modes.vectors - pencil.mass * modes.vectors * modes.eigenvalues.asDiagonal();
  CHECK(residual.norm() < 1e-5 * (pencil.mass * modes.vectors * modes.eigenvalues.asDiagonal()).norm());
}

Eigen::VectorXd plate_like(Eigen::Index size)
{
  Eigen::VectorXd eigenvalues(size);
  for (Eigen::Index i = 0; i < size; ++i)
    eigenvalues(i) = std::pow(static_cast<double>(i + 1), 2);
  return eigenvalues;
}

} // namespace

TEST_CASE("few and many unknowns give the lowest modes, free of rigid motion")
{
  check_modes(plate_like(12), 5);   // all eigenvalues
  check_modes(plate_like(150), 20); // Lanczos
}

TEST_CASE("equal eigenvalues are all found")
{
  Eigen::VectorXd eigenvalues = plate_like(150);
  eigenvalues(3) = eigenvalues(2);
  eigenvalues(8) = eigenvalues(7) = eigenvalues(6);
  check_modes(eigenvalues, 20);
}

TEST_CASE("a stiffness that is not positive is a failure of the numerics")
{
  const Eigen::MatrixXd unit = Eigen::MatrixXd::Identity(4, 4);
  CHECK_THROWS_AS(static_cast<void>(small_modes(-unit, unit, 1, 2)), NumericalFailure);
}
