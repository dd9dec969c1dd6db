// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/post/mode_pairs.h>
#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

/// Products of a reference with orthogonal modes of norm 1 and a plate whose modes are mixtures of them.
///
/// @param mixtures  a column for each mode of the other plate
ShapeProducts products_of(const Eigen::MatrixXd& mixtures)
{
  return {.reference = Eigen::MatrixXd::Identity(mixtures.rows(), mixtures.rows()),
          .cross = mixtures,
          .other = mixtures.transpose() * mixtures,
          .share_left_out = 0.0};
}

/// Modes of a free square of steel, on cells that know no diagonal symmetry.
struct SquareModes
{
  ModeShapes shapes;
  Eigen::VectorXd hz;
};

SquareModes square_modes(int cells_x, int cells_y)
{
  const Model model = test::plate_model(test::rectangle(0.2, 0.2, cells_x, cells_y, 2e-3),
                                        test::solid(test::isotropic(210e9, 0.3, 7800.0), 2e-3));
  const System system = assemble(model);
  const ModalResult modes = solve_modes(system, {.num_modes = 8});
  return {mode_shapes(model, system.dofs, modes.shapes), modes.frequencies_hz};
}

} // namespace

TEST_CASE("modes in another order are found by their shape")
{
  Eigen::MatrixXd mixtures = Eigen::MatrixXd::Zero(3, 5);
  mixtures(0, 3) = -2.0; // neither sign nor scale counts
  mixtures(1, 0) = 0.7;
  mixtures(2, 2) = 1.0;
  mixtures(0, 1) = mixtures(2, 1) = 0.1;
  mixtures(1, 4) = 1e-3;
  const ModePairing pairing = pair_by_shape(products_of(mixtures), Eigen::Vector3d(50.0, 70.0, 90.0),
                                            Eigen::VectorXd::LinSpaced(5, 60.0, 100.0));
  REQUIRE(pairing.pairs.size() == 3);
  CHECK(pairing.pairs[0].other == 3);
  CHECK(pairing.pairs[1].other == 0);
  CHECK(pairing.pairs[2].other == 2);
  for (const ShapePair& pair : pairing.pairs)
  {
    CHECK(pair.assurance == doctest::Approx(1.0));
    CHECK(pair.group_assurance == doctest::Approx(1.0));
  }
  CHECK(pairing.groups.empty());
  CHECK(pairing.unpaired.empty());
}

TEST_CASE("two modes that mix where they cross are paired as a space: turned within it, wholly alike")
{
  // b1, b2 = a1, a2 turned by 40 degrees: MAC cos^2 40 = 0.587 and sin^2 40 = 0.413; the space is the same.
  const double turn = 40.0 * std::numbers::pi / 180.0;
  Eigen::MatrixXd mixtures = Eigen::MatrixXd::Zero(3, 4);
  mixtures.block<2, 2>(0, 1) << std::cos(turn), -std::sin(turn), std::sin(turn), std::cos(turn);
  mixtures(2, 0) = 1.0;
  mixtures(2, 3) = 0.2;
  const Eigen::Vector3d reference_hz(50.0, 60.0, 90.0);
  const ModePairing close = pair_by_shape(products_of(mixtures), reference_hz, Eigen::Vector4d(70.0, 80.0, 80.3, 90.0));
  REQUIRE(close.pairs.size() == 3);
  CHECK(close.pairs[0].other == 1);
  CHECK(close.pairs[0].assurance == doctest::Approx(std::pow(std::cos(turn), 2)));
  CHECK(close.pairs[0].group_assurance == doctest::Approx(1.0));
  CHECK(close.pairs[1].group_assurance == doctest::Approx(1.0));
  REQUIRE(close.groups.size() == 1);
  CHECK(close.groups[0].reference == std::vector<int>{0, 1});
  CHECK(close.groups[0].other == std::vector<int>{1, 2});
  REQUIRE(close.groups[0].angles.size() == 2);
  CHECK(close.groups[0].angles.maxCoeff() < 1e-7);

  // The same shapes a tenth apart in frequency are no group.
  const ModePairing apart = pair_by_shape(products_of(mixtures), reference_hz, Eigen::Vector4d(70.0, 80.0, 88.0, 95.0));
  CHECK(apart.groups.empty());
  CHECK(apart.pairs[0].group_assurance == doctest::Approx(std::pow(std::cos(turn), 2)));
}

TEST_CASE("principal angles say how far a space is tilted out of the other")
{
  // b2 leaves the plane of a1 and a2 by 25 degrees.
  const double tilt = 25.0 * std::numbers::pi / 180.0;
  Eigen::MatrixXd mixtures(3, 3);
  mixtures << 1.0, 0.0, 0.0, 0.0, std::cos(tilt), -std::sin(tilt), 0.0, std::sin(tilt), std::cos(tilt);
  const ModePairing pairing =
      pair_by_shape(products_of(mixtures), Eigen::Vector3d(80.0, 80.1, 120.0), Eigen::Vector3d(80.0, 80.1, 120.0));
  REQUIRE(pairing.groups.size() == 1);
  CHECK(pairing.groups[0].angles(0) < 1e-7);
  CHECK(pairing.groups[0].angles(1) == doctest::Approx(tilt).epsilon(1e-10));
}

TEST_CASE("a mode like none of the other plate has no partner")
{
  Eigen::MatrixXd mixtures = Eigen::MatrixXd::Identity(3, 3);
  mixtures(1, 1) = 0.0;
  mixtures(0, 1) = 1.0; // twice the first, never the second
  const ModePairing pairing =
      pair_by_shape(products_of(mixtures), Eigen::Vector3d(50.0, 70.0, 90.0), Eigen::Vector3d(50.0, 70.0, 90.0));
  CHECK(pairing.unpaired == std::vector<int>{1});
  CHECK(pairing.pairs.size() == 2);
  CHECK_THROWS_AS((void)pair_by_shape(products_of(mixtures), Eigen::Vector2d(50.0, 70.0), Eigen::Vector3d::Ones()),
                  InvalidInput);
}

TEST_CASE("the repeated modes of a free square are one space on any mesh")
{
  // Modes 4 and 5 of a free isotropic square have one frequency: by symmetry they are a two-dimensional space, of which
  // each mesh picks its own two.
  const SquareModes one = square_modes(8, 7);
  const SquareModes two = square_modes(6, 9);
  const ModePairing pairing = pair_by_shape(shape_products(one.shapes, two.shapes), one.hz, two.hz);
  REQUIRE(pairing.pairs.size() == 8);
  for (const ShapePair& pair : pairing.pairs)
    CHECK(pair.group_assurance > 0.9999);
  REQUIRE(!pairing.groups.empty());
  CHECK(pairing.groups[0].reference == std::vector<int>{3, 4});
  CHECK(pairing.groups[0].other == std::vector<int>{3, 4});
  CHECK(pairing.groups[0].angles.maxCoeff() < 0.01);
}
